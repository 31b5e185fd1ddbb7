import type { Browser, BrowserContext, Page } from "@playwright/test";
import { environment } from "./env";
import { EventPage } from "./pages/event.page";
import { PaddockPage } from "./pages/paddock.page";
import { expect, test, type Who } from "./world";

const club = "sandvaer";
const phone = { viewport: { width: 360, height: 740 }, hasTouch: true };
/** One pixel. */
const png =
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==";

test.use({ as: "registrar" });

/** Plans an event with cars that are on no register: each gets the checks every car gets. */
async function planned(page: Page, name: string, cars: number): Promise<string> {
  await page.goto(`/club/${club}/new-event`);
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByLabel("Day", { exact: true }).fill("2031-06-14");
  await page.getByLabel("Venue").fill("Kvitnes ring");
  await page.getByRole("button", { name: "Plan the event" }).click();
  await page.getByRole("link", { name: "Read in an entry list" }).click();
  const lines = Array.from({ length: cars }, (_, at) => `${at + 1}\tkit car ${at + 1}\tDriver ${at + 1}`);
  await page.getByLabel("List", { exact: true }).fill(["Number\tCar\tDriver", ...lines].join("\n"));
  await page.getByRole("button", { name: "Read the list" }).click();
  await page.getByRole("button", { name: `Enter ${cars} cars` }).click();
  await expect(page.getByRole("link", { name: `Inspect number ${cars}`, exact: true })).toBeVisible();
  return new URL(page.url()).pathname.split("/").at(-1) ?? "";
}

test.describe("phones in the paddock", () => {
  const contexts: BrowserContext[] = [];
  test.afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
  });

  test("without a signal look at a whole event, and everything is there once, figures and photo too", async ({
    browser,
    page,
    sessionOf,
    newAddress,
    complaints,
  }) => {
    test.setTimeout(420_000);
    complaints.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|Failed to fetch|net::ERR/);
    const event = await planned(page, "Two phones", 3);
    const come = comer({
      browser,
      contexts,
      sessionOf,
      newAddress,
      listen: (one) => complaints.listenTo(one, environment.origin),
    });
    const [lucja, ragnhild] = [await come("scrutineer", event), await come("registrar", event)];
    for (const { context, paddock } of [lucja, ragnhild]) {
      await context.setOffline(true);
      await paddock.open(club, event);
    }

    // Łucja has the first two cars, Ragnhild the third; all of it with no signal.
    await lucja.paddock.car("1");
    const pressures = lucja.paddock.check("Tyre pressures alike across each axle, cold.");
    for (const [at, figure] of ["28 psi", "28 psi", "30 psi", "30 psi"].entries())
      await pressures
        .getByRole("textbox", { name: /tyre pressure/ })
        .nth(at)
        .fill(figure);
    await lucja.paddock.say("Boot or tailgate closes and is held.", "Advise");
    await lucja.paddock.photo("Boot or tailgate closes and is held.", Buffer.from(png, "base64"));
    await lucja.paddock.passRest();
    await lucja.paddock.decide("Pass with advice");
    await lucja.paddock.allCars();
    await lucja.paddock.car("2");
    await lucja.paddock.passRest();
    await lucja.paddock.decide("Pass the car");
    await ragnhild.paddock.car("3");
    await ragnhild.paddock.passRest();
    await ragnhild.paddock.decide("Pass the car");
    await expect(lucja.paddock.line).toContainText("1 photo not sent yet");

    // Back, in the other order, one of them twice.
    for (const { context, paddock } of [ragnhild, lucja, lucja]) {
      await context.setOffline(false);
      await paddock.send();
      await expect(paddock.line).toContainText("All sent.");
    }
    const report = await page.request.get(`/api/club/${club}/event/${event}/report.csv`);
    const lines = (await report.text()).split("\r\n").slice(1, -1);
    const of = (word: string) => lines.filter((line) => line.includes(word));
    expect(
      of(",Decision,").map((line) =>
        line
          .split(",")
          .slice(0, 1)
          .concat(line.split(",")[8] ?? ""),
      ),
    ).toEqual([
      ["1", "passed with advice"],
      ["2", "passed"],
      ["3", "passed"],
    ]);
    expect(of("Not looked at")).toEqual([]);
    expect(of(",Advised,")).toHaveLength(1);
    expect(of(",Figure,").filter((line) => line.includes("psi"))).toHaveLength(4);
    await page.goto(`/club/${club}/event/${event}`);
    await expect(page.getByText("everything that phones told of is here")).toBeVisible();
  });

  test("one that is lost with something unsent is missed by name, and with how much", async ({
    browser,
    page,
    sessionOf,
    newAddress,
    complaints,
  }) => {
    test.setTimeout(180_000);
    complaints.allow(/Failed to load resource|Failed to fetch|net::ERR/);
    const event = await planned(page, "Lost phone", 2);
    const come = comer({
      browser,
      contexts,
      sessionOf,
      newAddress,
      listen: (one) => complaints.listenTo(one, environment.origin),
    });
    const { context, paddock } = await come("scrutineer", event);
    // The signal carries words and no pictures.
    await context.route("**/evidence", (route) => route.abort());
    await paddock.car("1");
    await paddock.say("Boot or tailgate closes and is held.", "Refuse");
    await expect(paddock.line).toContainText("All sent.");
    await paddock.photo("Boot or tailgate closes and is held.", Buffer.from(png, "base64"));
    await paddock.send();
    await expect(paddock.line).toContainText("1 photo not sent yet");
    await expect(async () => {
      await new EventPage(page).open(club, event);
      await expect(page.getByText("held 1 not sent. They are missing here.")).toBeVisible({ timeout: 1_000 });
    }).toPass();
    await expect(page.getByText("Łucja Skårnes's phone", { exact: false })).toBeVisible();
    await context.close();
    // What it had sent is there whole.
    await page.getByRole("link", { name: "Inspect number 1", exact: true }).click();
    await expect(page.getByText(/0 passed, 0 advised, 1 refused/)).toBeVisible();
  });
});

interface Coming {
  readonly browser: Browser;
  readonly contexts: BrowserContext[];
  readonly sessionOf: (who: Who) => Promise<Awaited<ReturnType<BrowserContext["storageState"]>>>;
  readonly newAddress: () => string;
  readonly listen: (context: BrowserContext) => void;
}

/** Somebody comes with a phone and takes an event along. */
function comer({ browser, contexts, sessionOf, newAddress, listen }: Coming) {
  return async (who: Who, event: string) => {
    const context = await browser.newContext({
      ...phone,
      storageState: await sessionOf(who),
      extraHTTPHeaders: { "x-forwarded-for": newAddress() },
    });
    listen(context);
    contexts.push(context);
    const paddock = await new PaddockPage(await context.newPage()).open(club, event);
    await paddock.readyForNoConnection();
    return { context, paddock };
  };
}
