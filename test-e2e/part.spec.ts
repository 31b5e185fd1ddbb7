import { unsoundness } from "./pages/soundness";
import { expect, test } from "./world";

const parts = "/club/sandvaer/part";

test.describe("for the registrar", () => {
  test.use({ as: "registrar" });

  test("a part is put on the list, refused at the field that cannot be read, changed, and taken off again", async ({
    page,
  }) => {
    await page.goto("/club/sandvaer/desk");
    await page.getByRole("link", { name: "Parts", exact: true }).click();
    await page.getByRole("link", { name: "Add a part" }).click();
    await page.getByLabel("Assembly").selectOption({ label: "Brakes" });
    await page.getByLabel("Place", { exact: true }).fill("Front caliper");
    await page.getByLabel("Name", { exact: true }).fill("Front caliper, cast anew");
    await page.getByLabel("Donor or maker").fill("foundry");
    await page.getByLabel("How it goes, row 1").selectOption({ label: "Fits" });
    await page.getByLabel("What, row 1", { exact: true }).fill("Front caliper bolt thread");
    await page.getByLabel("Value, row 1").fill("M12x9");
    await page.getByRole("button", { name: "Add the part" }).click();
    await expect(page.getByLabel("Value, row 1")).toHaveAttribute("aria-invalid", "true");
    await expect(page.getByLabel("Donor or maker")).toHaveValue("foundry");
    await page.getByLabel("Value, row 1").fill("M12x1.25");
    await page.getByRole("button", { name: "Add the part" }).click();

    await expect(page.getByRole("heading", { level: 1, name: "Front caliper, cast anew" })).toBeVisible();
    await expect(page.getByRole("region", { name: "What else goes there" })).toContainText(
      "Front caliper, unified bolts",
    );
    // 7/16-20 UNF of the early upright, M12x1.25 of this caliper: one starts in the other.
    await expect(page.getByText(/Not together with Front upright, early/)).toBeVisible();
    expect(await unsoundness(page)).toEqual([]);

    await page.getByText("Take it off the list").first().click();
    await page.getByLabel("Why").fill("Tried out");
    await page.getByRole("button", { name: "Take it off the list" }).click();
    await expect(page.getByRole("heading", { level: 1, name: "Parts" })).toBeVisible();
    await expect(page.getByRole("link", { name: "Front caliper, cast anew" })).toHaveCount(0);
  });
});

test.describe("for an owner", () => {
  test.use({ as: "owner", viewport: { width: 360, height: 780 } });

  test("a scarce part is looked up on a phone, and noted as found", async ({ page }) => {
    await page.goto(`${parts}?assembly=body`);
    await expect(page.getByRole("row", { name: /Windscreen, coupé/ })).toContainText("not to be had");
    await expect(page.getByRole("link", { name: "Add a part" })).toHaveCount(0);
    await page.getByRole("link", { name: "Windscreen, coupé" }).click();
    await page.getByLabel("Day", { exact: true }).fill("2199-01-01");
    await page.getByLabel("Where, and what it was").fill("In a barn, one, with a chip");
    await page.getByRole("button", { name: "Note it" }).click();
    await expect(page.getByLabel("Day", { exact: true })).toHaveAttribute("aria-invalid", "true");
    await expect(page.getByLabel("Where, and what it was")).toHaveValue("In a barn, one, with a chip");
    await page.getByLabel("Day", { exact: true }).fill("2026-06-01");
    await page.getByRole("button", { name: "Note it" }).click();
    const notes = page.getByRole("region", { name: "Found, sought, tried" });
    await expect(notes).toContainText("In a barn, one, with a chip");
    expect(await unsoundness(page)).toEqual([]);
    await notes.getByRole("button", { name: /Take back the note of 1 June 2026/ }).click();
    await expect(notes).not.toContainText("In a barn");
  });
});
