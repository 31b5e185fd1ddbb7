import { EvidencePage } from "./pages/evidence.page";
import { unsoundness } from "./pages/soundness";
import { DraftPage } from "./pages/submission.page";
import { expect, test } from "./world";

/** Pictures of this run: what an earlier one added is on record already. */
const run = Date.now() % 1_000_000;

test.describe("a change handed in on a phone", () => {
  test.use({ as: "owner", viewport: { width: 360, height: 780 } });

  test("survives a cut line and a closed tab, is accepted by the registrar, and the owner sees it", async ({
    page,
    browser,
    context,
    complaints,
    requestAs,
  }) => {
    // The line is cut on purpose: the browser says so of every request that fails.
    complaints.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter", "Front anti-roll bar mounting"]);
    await draft.write("On it now", "23 mm");
    await draft.saved();
    expect(await unsoundness(page)).toEqual([]);

    await context.setOffline(true);
    await draft.write("Fitted", "14 Nov 2026");
    await draft.write("Odometer", "48 210");
    await expect(page.getByText("No signal: kept on this device")).toBeVisible();
    // Consequences are worked out in the browser, signal or not.
    await draft.write("On it now", "24 mm");
    await expect(page.getByRole("region", { name: "What it does" })).toContainText("times what it was");
    await page.getByRole("button", { name: "Hand in" }).click();
    await expect(page.getByText("Not handed in yet")).toBeVisible();
    await draft.choose("Polyurethane blocks");
    // The form has looked again: nothing is in the way any more.
    await expect(page.getByText("Not handed in yet")).toBeHidden();
    await page.getByRole("button", { name: "Hand in" }).click();
    await expect(page.getByText("No signal: nothing was handed in yet.")).toBeVisible();

    const address = page.url();
    await page.close();
    await context.setOffline(false);
    const again = await context.newPage();
    const later = new DraftPage(again);
    await again.goto(address);
    await expect(again.getByLabel("Odometer")).toHaveValue("48 210");
    await expect(again.getByLabel("On it now").first()).toHaveValue("24 mm");
    await later.saved();
    await again.getByRole("button", { name: "Hand in" }).click();
    await expect(again.getByRole("heading", { level: 1, name: /^A change to/ })).toBeVisible();

    const registrar = await browser.newContext({
      storageState: await (await requestAs("registrar")).storageState(),
    });
    const desk = await registrar.newPage();
    await desk.goto(address);
    await expect(desk.getByRole("heading", { name: "Decide" })).toBeVisible();
    await expect(desk.getByRole("row", { name: /Front anti-roll bar diameter/ })).toContainText("24 mm");
    expect(await unsoundness(desk)).toEqual([]);
    // In a field a letter is a letter.
    await desk.getByLabel("Reason, or your question").fill("Seen on the phot");
    await desk.keyboard.type("a");
    await expect(desk.getByLabel("Reason, or your question")).toHaveValue("Seen on the phota");
    await desk.getByRole("heading", { name: "Decide" }).click();
    await desk.keyboard.press("a");
    await expect(desk.getByText("Accepted.")).toBeVisible();
    await registrar.close();

    await again.goto("/club/sandvaer/garage");
    await expect(again.getByRole("region", { name: "Decided" })).toContainText("Accepted");
    expect(await unsoundness(again)).toEqual([]);
    await again.goto("/club/sandvaer/notice");
    await expect(again.getByRole("link", { name: /your change is on the record/ }).first()).toBeVisible();
  });

  test("with photos taken where there is no signal keeps them over a closed tab, and they stand beside the value they show", async ({
    page,
    browser,
    context,
    complaints,
    requestAs,
  }) => {
    complaints.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    // What was accepted before is what the car has already: no value here is within the resolution of another test's.
    await draft.write("On it now", `${19 + (run % 15) / 10} mm`);
    await draft.write("Fitted", "14 Nov 2026");
    await draft.saved();
    const maker = new EvidencePage(page);
    const [bar, mistaken] = [await maker.photo("bar.jpg", run), await maker.photo("thumb.jpg", run + 1)];

    await context.setOffline(true);
    await draft.photo([bar, mistaken]);
    await expect(draft.photos).toHaveCount(2);
    await expect(draft.photos.first()).toContainText("Kept on this device");
    expect(await maker.isDrawn(draft.photos.first().getByRole("img"))).toBe(true);
    await expect(page.getByText("2 photos are not sent yet.")).toBeVisible();
    await page.getByRole("button", { name: "Remove photo 2" }).click();
    await expect(draft.photos).toHaveCount(1);
    expect(await unsoundness(page)).toEqual([]);
    await page.getByRole("button", { name: "Hand in" }).click();
    await expect(page.getByText("No signal: nothing was handed in yet.")).toBeVisible();
    const address = page.url();
    await page.close();
    await context.setOffline(false);

    const again = await context.newPage();
    await again.goto(address);
    const later = new DraftPage(again);
    await expect(later.photos).toHaveCount(1);
    await expect(later.photos.first()).toContainText("Sent.");
    await expect(later.photos.first().getByLabel(/^Shows/)).toHaveValue("front.antiRollBar.diameter");
    // One more is taken out again at the club.
    await later.photo([mistaken]);
    await expect(later.photos.nth(1)).toContainText("Sent.");
    await expect(later.photos).toHaveCount(2);
    await again.getByRole("button", { name: "Remove photo 2" }).click();
    await expect(later.photos).toHaveCount(1);
    await again.reload();
    await expect(later.photos).toHaveCount(1);
    await again.getByRole("button", { name: "Hand in" }).click();
    await expect(again.getByRole("heading", { level: 1, name: /^A change to/ })).toBeVisible();

    const registrar = await browser.newContext({
      storageState: await (await requestAs("registrar")).storageState(),
    });
    const desk = await registrar.newPage();
    await desk.goto(address);
    const row = desk.getByRole("row", { name: /Front anti-roll bar diameter/ });
    await expect(row.getByRole("img")).toHaveCount(1);
    expect(await unsoundness(desk)).toEqual([]);
    await desk.getByRole("button", { name: /^Accept/ }).click();
    await expect(desk.getByText("Accepted.")).toBeVisible();
    await desk.goto(address);
    await row.getByRole("link").click();
    await expect(
      desk
        .getByRole("region", { name: "What it supports" })
        .getByRole("link", { name: /Front anti-roll bar diameter/ }),
    ).toBeVisible();
    await registrar.close();
  });

  test("says which threads must not be mixed while they are typed, and the registrar is told as well", async ({
    page,
    browser,
    requestAs,
  }) => {
    const draft = new DraftPage(page);
    await draft.begin(["Front drop link bolt thread"]);
    await draft.write("On it now", "M10x1.25");
    await draft.write("Fitted", "14 Nov 2026");
    await page.getByRole("button", { name: "Add a fastener" }).click();
    await page.getByLabel("Where", { exact: true }).fill("link to bracket");
    await page.getByLabel("Thread", { exact: true }).fill("3/8-24 UNF");
    const told = /The fastener "link to bracket" has 3\/8-24 UNF.*never mix them/;
    await expect(page.getByText(told)).toBeVisible();
    expect(await unsoundness(page)).toEqual([]);
    await draft.saved();
    await page.getByRole("button", { name: "Hand in" }).click();
    await expect(page.getByRole("heading", { level: 1, name: /^A change to/ })).toBeVisible();
    const registrar = await browser.newContext({
      storageState: await (await requestAs("registrar")).storageState(),
    });
    const desk = await registrar.newPage();
    await desk.goto(page.url());
    await expect(desk.getByText(told)).toBeVisible();
    await registrar.close();
    await page.getByRole("button", { name: "Withdraw" }).click();
    await expect(page.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
  });

  test("typed before the page's script has come is saved too, and on top of what an earlier tab left behind", async ({
    page,
    context,
    complaints,
  }) => {
    complaints.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    await draft.write("Odometer", "48 210");
    await draft.saved();
    const address = page.url();
    await context.setOffline(true);
    await draft.write("Odometer", "48 300");
    await expect(page.getByText("No signal: kept on this device")).toBeVisible();
    await page.close();
    await context.setOffline(false);

    const slow = await context.newPage();
    let arrive = () => {};
    const arrived = new Promise<void>((resolve) => {
      arrive = resolve;
    });
    await slow.route(/\/_next\/static\/.*\.js/, async (route) => {
      await arrived;
      await route.continue();
    });
    await slow.goto(address, { waitUntil: "commit" });
    const later = new DraftPage(slow);
    await later.write("On it now", "22 mm");
    arrive();
    await later.saved();
    await slow.reload();
    await expect(slow.getByLabel("On it now").first()).toHaveValue("22 mm");
    await expect(slow.getByLabel("Odometer")).toHaveValue("48 300");
    await slow.getByRole("button", { name: "Withdraw" }).click();
    await expect(slow.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
  });

  test("is handed in where the line lets the page through and then holds what works out consequences", async ({
    page,
    complaints,
  }) => {
    complaints.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    await draft.write("On it now", "22 mm");
    await draft.write("Fitted", "14 Nov 2026");
    await draft.saved();
    let arrived = "";
    await page.route(page.url(), async (route) => {
      const answer = await route.fetch();
      arrived = await answer.text();
      await route.fulfill({ response: answer });
    });
    const held: string[] = [];
    await page.route(/\/_next\/static\/.*\.js/, async (route) => {
      const [name = ""] = /[^/]+\.js/.exec(route.request().url()) ?? [];
      if (arrived.includes(name)) return route.continue();
      // Neither an answer nor an end: as a line that went dead does it.
      held.push(name);
    });
    await page.reload();
    await expect.poll(() => held.length).toBeGreaterThan(0);
    await page.getByRole("button", { name: "Hand in" }).click();
    await expect(page.getByRole("heading", { level: 1, name: /^A change to/ })).toBeVisible();
    await page.getByRole("button", { name: "Withdraw" }).click();
    await expect(page.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
  });

  test("of two days is two changes of one submission, and a word is there again after the tab was closed", async ({
    page,
    context,
  }) => {
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    await draft.write("On it now", "22 mm");
    await page.getByText("Add another part").click();
    await page.getByLabel("Or look for it by name").fill("front disc face");
    await page.getByRole("checkbox", { name: "Front disc face", exact: true }).check();
    await page.getByRole("button", { name: "Add them as another change" }).click();
    await expect(page.getByRole("heading", { name: "Change 2: what was changed" })).toBeVisible();
    await page.getByLabel("Fitted").nth(1).fill("3/2020");
    await page.getByLabel("A word to the registrar").fill("The discs came first");
    await draft.saved();
    expect(await unsoundness(page)).toEqual([]);
    const address = page.url();
    await page.close();
    const again = await context.newPage();
    await again.goto(address);
    await expect(again.getByLabel("Fitted").nth(1)).toHaveValue("3/2020");
    await expect(again.getByLabel("A word to the registrar")).toHaveValue("The discs came first");
    await again.getByRole("button", { name: "Take out change 2" }).click();
    await expect(again.getByRole("heading", { name: "What was changed", exact: true })).toBeVisible();
    await again.getByRole("button", { name: "Withdraw" }).click();
    await expect(again.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
  });

  test("mended and handed in by the very next press goes through: nothing is told of before the last key", async ({
    page,
  }) => {
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    await draft.write("On it now", "40°");
    await draft.write("Fitted", "14 Nov 2026");
    await page.getByRole("button", { name: "Hand in" }).click();
    await expect(page.getByText("Not handed in yet")).toBeVisible();
    // Both in one task of the browser, so that no pause for thought can have passed between them.
    await page.evaluate(`{
      const field = document.querySelector("input[name='modifications.0.changes.0.after']");
      Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value").set.call(field, "22 mm");
      field.dispatchEvent(new Event("input", { bubbles: true }));
      [...document.querySelectorAll("button")].find((one) => one.value === "submit").click();
    }`);
    await expect(page.getByRole("heading", { level: 1, name: /^A change to/ })).toBeVisible();
    await page.getByRole("button", { name: "Withdraw" }).click();
    await expect(page.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
  });

  test("works without a script: a Save button, lines added and taken out, errors at their fields", async ({
    browser,
    page,
  }) => {
    const context = await browser.newContext({
      javaScriptEnabled: false,
      storageState: await page.context().storageState(),
    });
    const plain = await context.newPage();
    const draft = new DraftPage(plain);
    await draft.begin(["Front camber"]);
    await expect(plain.getByLabel("On it now")).toHaveCount(2);
    await plain.getByLabel("On it now").first().fill("40°");
    await plain.getByRole("button", { name: "Save" }).last().click();
    await expect(plain.getByLabel("On it now").first()).toHaveValue("40°");
    await plain
      .getByRole("button", { name: /^Take out Front camber/ })
      .last()
      .click();
    await expect(plain.getByLabel("On it now")).toHaveCount(1);
    const photo = await new EvidencePage(page).photo("plain.jpg", run + 2);
    await plain.getByLabel("Choose photos or documents").setInputFiles(photo);
    await plain.getByRole("button", { name: "Add the photos" }).click();
    await expect(plain.getByText("One photo or document was added.")).toBeVisible();
    await expect(new DraftPage(plain).photos).toHaveCount(1);
    await plain.getByRole("button", { name: "Hand in" }).click();
    await expect(plain.getByRole("alert")).toContainText("too large to be believed");
    await expect(plain.getByLabel("On it now").first()).toHaveAttribute("aria-invalid", "true");
    await plain.getByRole("button", { name: "Withdraw" }).click();
    await expect(plain.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
    await context.close();
  });
});
