import { unsoundness } from "./pages/soundness";
import { DraftPage } from "./pages/submission.page";
import { expect, test } from "./world";

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
    await plain.getByRole("button", { name: "Hand in" }).click();
    await expect(plain.getByRole("alert")).toContainText("too large to be believed");
    await expect(plain.getByLabel("On it now").first()).toHaveAttribute("aria-invalid", "true");
    await plain.getByRole("button", { name: "Withdraw" }).click();
    await expect(plain.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
    await context.close();
  });
});
