import { SignInPage } from "./pages/sign-in.page";
import { unsoundness } from "./pages/soundness";
import { DraftPage } from "./pages/submission.page";
import { expect, password, people, test } from "./world";

test.describe("the form of a change, on a phone", () => {
  test.use({ as: "owner", viewport: { width: 360, height: 780 } });

  test("opens again without a signal with what was saved and what was typed since", async ({
    page,
    context,
    complaints,
  }) => {
    complaints.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    await draft.write("On it now", "21 mm");
    await draft.saved();
    await draft.keptOffline();
    await context.setOffline(true);
    await page.reload();
    await expect(page.getByLabel("On it now").first()).toHaveValue("21 mm");
    await draft.write("Odometer", "48 400");
    await expect(page.getByText("No signal: kept on this device")).toBeVisible();
    await page.reload();
    await expect(page.getByLabel("Odometer")).toHaveValue("48 400");
    // What it does is worked out without a signal too.
    await expect(page.getByRole("region", { name: "What it does" })).toContainText("times what it was");
    await context.setOffline(false);
    await draft.saved();
    await draft.keptOffline();
    const address = page.url();
    await page.getByRole("button", { name: "Withdraw" }).click();
    await expect(page.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
    // The page that came instead of the form is no draft: nothing is kept of it.
    expect(await draft.isKeptOffline(address)).toBe(false);
  });

  test("opens no more without a signal once its owner has signed out", async ({
    browser,
    newAddress,
    complaints,
  }) => {
    complaints.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
    // A session of its own: the one that the other tests share must not end.
    const context = await browser.newContext({
      storageState: { cookies: [], origins: [] },
      viewport: { width: 360, height: 780 },
      extraHTTPHeaders: { "x-forwarded-for": newAddress() },
    });
    const page = await context.newPage();
    await page.goto("/sign-in");
    await new SignInPage(page).send(people.owner.email, password);
    await expect(page).not.toHaveURL(/sign-in/);
    const draft = new DraftPage(page);
    await draft.begin(["Front anti-roll bar diameter"]);
    await draft.keptOffline();
    const address = page.url();
    await page.getByText("You", { exact: true }).click();
    await page.getByRole("button", { name: "Sign out" }).click();
    await expect(page).toHaveURL(/sign-in/);
    await expect.poll(() => draft.isKeptOffline(address)).toBe(false);
    await context.setOffline(true);
    await expect(page.goto(address)).rejects.toThrow(/ERR_/);
    await context.close();
  });

  test("keeps the parts ticked over searches, shows what the record has, and tells the registrar where the owner corrects it", async ({
    page,
    browser,
    requestAs,
  }) => {
    await page.goto("/club/sandvaer/garage");
    await page.getByRole("link", { name: "Record a change" }).first().click();
    const look = page.getByLabel("Or look for it by name");
    // Until the script has come the search is a page of its own, with the ticks in its address.
    await look.fill("rear drop link");
    await page.getByRole("button", { name: "Look" }).click();
    await page.getByRole("checkbox", { name: "Rear drop link length", exact: true }).check();
    await look.fill("rear anti-roll");
    await page.getByRole("button", { name: "Look" }).click();
    await page.getByRole("checkbox", { name: "Rear anti-roll bar diameter", exact: true }).check();
    await expect(page.getByRole("group", { name: "Ticked as well" })).toContainText("Rear drop link length");
    expect(await unsoundness(page)).toEqual([]);
    await page.getByLabel("Your units").selectOption("imperial");
    await page.getByRole("button", { name: "Go on" }).click();
    await expect(page.getByRole("heading", { name: "What was changed" })).toBeVisible();
    const line = (name: string) => page.getByRole("group", { name, exact: true });
    const bar = line("Rear anti-roll bar diameter");
    await expect(bar.getByLabel("Before")).toHaveValue("0.55 in");
    await expect(bar).toContainText("From the record, which has it as 14 mm.");
    await bar.getByLabel("On it now").fill("13/16");
    await bar.getByLabel("Before").fill("5/8");
    await expect(bar).toContainText("You correct the record, which has 14 mm.");
    await line("Rear drop link length, left").getByLabel("On it now").fill("5 1/4");
    await page.getByRole("button", { name: /^Same as left/ }).click();
    await expect(line("Rear drop link length, right").getByLabel("On it now")).toHaveValue("5 1/4");
    await page.getByLabel("Fitted", { exact: true }).fill("14 Nov 2026");
    await new DraftPage(page).saved();
    await page.getByRole("button", { name: "Hand in" }).click();
    await expect(page.getByRole("heading", { level: 1, name: /^A change to/ })).toBeVisible();
    const registrar = await browser.newContext({
      storageState: await (await requestAs("registrar")).storageState(),
    });
    const desk = await registrar.newPage();
    await desk.goto(page.url());
    await expect(desk.getByRole("row", { name: /Rear anti-roll bar diameter/ })).toContainText(
      "the owner says so; the record has 14 mm",
    );
    await registrar.close();
    await page.getByRole("button", { name: "Withdraw" }).click();
    await expect(page.getByText("Withdrawn", { exact: false }).first()).toBeVisible();
  });
});
