import { expect, test } from "./world";

test.use({ as: "registrar" });

test("a rule set is copied to next year, a limit changed, and the limit seen on a car", async ({ page }) => {
  await page.goto("/club/sandvaer/rule-set");
  await page.getByRole("main").getByRole("link", { name: /,/ }).first().click();
  await page.getByLabel("Edition of the copy").fill("Next year");
  await page.getByRole("button", { name: "Copy into a draft" }).click();
  await expect(page.getByRole("heading", { name: /, Next year$/ })).toBeVisible();
  await page.getByRole("link", { name: "Add a limit" }).click();
  await page.getByLabel("Characteristic").fill("Front ride height");
  await page.getByLabel("At least").fill("100 bananas");
  await page.getByLabel("Where it comes from").fill("House rules");
  await page.getByRole("button", { name: "Save the limit" }).click();
  await expect(page.locator("#field-lower-error")).toContainText("cannot be read");
  await page.getByLabel("At least").fill("100 mm");
  await page.getByRole("button", { name: "Save the limit" }).click();
  await expect(page.getByText("added Limit: Front ride height: at least 100 mm")).toBeVisible();
  await page.getByRole("link", { name: "See it on a car" }).click();
  await page.getByLabel("Car").fill("S2-0003");
  await page.getByRole("button", { name: "See the car" }).click();
  await expect(page.getByText("the rules ask for at least 100 mm")).toBeVisible();
  await page.getByRole("link", { name: "Rule set" }).first().click();
  await page.getByRole("button", { name: "Discard the draft" }).click();
  await expect(page.getByRole("heading", { name: "Rule sets" })).toBeVisible();
});

test("a pasted list is asked where it is doubtful, and a refused car comes again with only what was open", async ({
  page,
}) => {
  await page.goto("/club/sandvaer/new-event");
  await page.getByLabel("Name", { exact: true }).fill("Pasted day");
  await page.getByLabel("Day", { exact: true }).fill("2031-05-17");
  await page.getByLabel("Venue").fill("Kvitnes ring");
  await page.getByRole("button", { name: "Plan the event" }).click();
  await page.getByRole("link", { name: "Read in an entry list" }).click();
  await page
    .getByLabel("List", { exact: true })
    .fill("Number\tChassis\tDriver\n7\tS2-OOO3\tÅse\n12\tkit car\tZoë");
  await page.getByRole("button", { name: "Read the list" }).click();
  await expect(page.getByText(/2 lines; 1 to be settled/)).toBeVisible();
  await page.getByRole("button", { name: "Enter 2 cars" }).click();
  await expect(page.getByText("say which car it is").first()).toBeVisible();
  const chosen = page.getByLabel("Car on line 2");
  await chosen.selectOption({ index: 1 });
  await page.getByRole("button", { name: "Enter 2 cars" }).click();
  await expect(page.getByRole("link", { name: "Inspect number 12" })).toBeVisible();

  await page.getByRole("link", { name: "Inspect number 12" }).click();
  const results = page.getByLabel("Result", { exact: true });
  await expect(results.first()).toBeVisible();
  const count = await results.count();
  for (let at = 0; at < count; at++) await results.nth(at).selectOption("pass");
  await results.first().selectOption("refuse");
  await page.getByRole("combobox", { name: "Decision" }).selectOption("refused");
  await page.getByRole("button", { name: "Save findings" }).click();
  await expect(page.getByText(`${count - 1} checks passed before are not shown`)).toBeVisible();
  await expect(results).toHaveCount(1);
  await results.first().selectOption("pass");
  await page.getByRole("combobox", { name: "Decision" }).selectOption("pass");
  await page.getByRole("button", { name: "Save findings" }).click();
  await expect(page.getByText("Decided: passed")).toBeVisible();
});
