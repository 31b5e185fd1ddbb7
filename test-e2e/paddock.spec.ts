import type { BrowserContext } from "@playwright/test";
import { environment } from "./env";
import { PaddockPage } from "./pages/paddock.page";
import { expect, test, type Who } from "./world";

const club = "sandvaer";
const event = "kvitnes-track-day";
const phone = { viewport: { width: 360, height: 740 }, hasTouch: true };

/** The first two checks of a car, whatever the rule set asks first. */
async function firstChecks(paddock: PaddockPage): Promise<readonly [string, string]> {
  const headings = paddock.page.getByRole("heading", { level: 3 });
  const [one = "", other = ""] = (await headings.allInnerTexts()).slice(0, 2);
  return [one, other];
}

test.describe("two scrutineers with phones and no signal", () => {
  const contexts: BrowserContext[] = [];
  test.afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
  });

  test("look at cars a whole event long, come back, and nothing is lost and nothing doubled", async ({
    browser,
    sessionOf,
    newAddress,
    complaints,
  }) => {
    test.setTimeout(180_000);
    complaints.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|Failed to fetch|net::ERR/);
    const come = async (who: Who) => {
      const context = await browser.newContext({
        ...phone,
        storageState: await sessionOf(who),
        extraHTTPHeaders: { "x-forwarded-for": newAddress() },
      });
      complaints.listenTo(context, environment.origin);
      contexts.push(context);
      const paddock = await new PaddockPage(await context.newPage()).open(club, event);
      await paddock.readyForNoConnection();
      return { context, paddock };
    };
    const [lucja, ragnhild] = [await come("scrutineer"), await come("registrar")];

    // The paddock: no signal, the page closed and opened again.
    for (const { context, paddock } of [lucja, ragnhild]) {
      await context.setOffline(true);
      await paddock.open(club, event);
    }
    await lucja.paddock.car("7");
    const [one, other] = await firstChecks(lucja.paddock);
    await lucja.paddock.say(one, "Refuse");
    await lucja.paddock.note(one, "nut missing, left rear");
    await lucja.paddock.say(other, "Pass");
    await ragnhild.paddock.car("7");
    await ragnhild.paddock.say(one, "Pass");
    await ragnhild.paddock.allCars();
    await ragnhild.paddock.car("9");
    const [hers, next] = await firstChecks(ragnhild.paddock);
    await ragnhild.paddock.say(hers, "Advise");
    // Typed and not yet given a result: there after the page was closed.
    await ragnhild.paddock.note(next, "look at the hose again");
    await ragnhild.paddock.page.reload();
    const unsaid = ragnhild.paddock.check(next).getByRole("textbox", { name: /^Note/ });
    await expect(unsaid).toHaveValue("look at the hose again");
    await expect(ragnhild.paddock.line).toContainText("2 not sent yet");

    // Back at the clubhouse, one after the other, one of them sending twice.
    await lucja.context.setOffline(false);
    await lucja.paddock.send();
    await expect(lucja.paddock.line).toContainText("All sent.");
    await ragnhild.context.setOffline(false);
    await ragnhild.paddock.send();
    await expect(ragnhild.paddock.line).toContainText("All sent.");
    await ragnhild.paddock.send();

    // They had not seen each other's finding: both are shown, and one of them settles it.
    await lucja.paddock.send();
    const disputed = lucja.paddock.check(one);
    await expect(disputed.getByRole("alert")).toContainText("Two scrutineers differ");
    await expect(disputed.getByRole("alert")).toContainText("Łucja Skårnes: refused");
    await expect(disputed.getByRole("alert")).toContainText("nut missing, left rear");
    await expect(disputed.getByRole("alert")).toContainText("Ragnhild Tveitås: passed");
    await lucja.paddock.say(one, "Refuse");
    await expect(disputed.getByRole("alert")).toHaveCount(0);
    await expect(lucja.paddock.line).toContainText("All sent.");

    // Passing is not offered while something is refused or open; refusing is.
    const decide = (name: string) => lucja.paddock.page.getByRole("button", { name, exact: true });
    await expect(decide("Pass the car")).toBeDisabled();
    await decide("Refuse the car").click();
    await expect(lucja.paddock.line).toContainText("All sent.");
    await ragnhild.paddock.send();
    await ragnhild.paddock.allCars();
    const row = await ragnhild.paddock.rowOf("7");
    await expect(row).toContainText("1 refused");
    await expect(row).toContainText("refused");
    await expect(row).toContainText("1 passed");
  });
});

test.describe("who is no scrutineer", () => {
  test.use({ as: "owner" });

  test("is told so, and gets no entrant's name", async ({ page }) => {
    await page.goto(`/club/${club}/event/${event}/paddock`);
    await expect(page.getByRole("main")).toContainText("This is for: scrutineer, registrar, fleet manager.");
  });
});
