import { JournalPage } from "./pages/journal.page";
import { unsoundness } from "./pages/soundness";
import { expect, test } from "./world";

test.describe("for the registrar", () => {
  test.use({ as: "registrar" });

  test("the journal is read page by page, and narrowed to one car and one kind of change", async ({
    page,
  }) => {
    const journal = await new JournalPage(page).open();
    await expect(journal.entries).toHaveCount(50);
    await journal.next.click();
    await page.waitForURL(/before=\d+/);
    await expect(journal.entries).toHaveCount(50);

    await journal.narrow({ Car: "S1-0004", "What was done": "Car added" });
    await expect(page).toHaveURL(/car=S1-0004&/);
    await expect(journal.entries).toHaveCount(1);
    const [entry] = await journal.entries.all();
    await expect(entry as NonNullable<typeof entry>).toContainText("command line");
    await expect(journal.entries).toContainText("Built: 3/68");
    await expect(journal.entries).toContainText("Rear anti-roll bar diameter, as built: not fitted");
    await expect(journal.entries).toContainText("read in from sandvaer-register.csv, line 4");
    expect(await journal.entries.textContent()).not.toContain("{");
  });

  test("times are in the reader's zone, said plainly, and in UTC in the markup", async ({ page }) => {
    const journal = await new JournalPage(page).open();
    const zone = await page.evaluate("Intl.DateTimeFormat().resolvedOptions().timeZone");
    await expect(
      page.getByText(`Times are in your time zone, ${String(zone).replaceAll("_", " ")}.`),
    ).toBeVisible();
    await expect(journal.entries.first().locator("time")).toHaveAttribute(
      "datetime",
      /^\d{4}-\d\d-\d\dT[\d:.]+Z$/,
    );
  });

  test("one entry is shown to the letter on demand", async ({ page }) => {
    const journal = await new JournalPage(page).openOf("S1-0004", "?action=car.add");
    await journal.entries.getByRole("link", { name: /no\. \d+/ }).click();
    await expect(page.getByRole("heading", { name: "Car added" })).toBeVisible();
    await expect(page.locator("pre")).toContainText('"chassis": "S1-0004"');
  });

  test("the chain is checked when asked for, and says up to which entry it holds", async ({ page }) => {
    const journal = await new JournalPage(page).open();
    await expect(journal.chain.getByRole("status")).toHaveCount(0);
    await journal.check.click();
    await expect(journal.chain.getByRole("status")).toContainText(
      /The chain holds: [\d,]+ entries, from the first to no\. \d+/,
    );
  });

  test("what cannot be read is told at its field, and nothing is shown", async ({ page }) => {
    const journal = await new JournalPage(page).open("?from=2026-05-03&to=2026-05-01");
    await expect(page.getByText("2026-05-01 lies before 2026-05-03")).toBeVisible();
    await expect(journal.entries).toHaveCount(0);
    await journal.open("?car=S9-9999");
    await expect(page.getByText('"S9-9999" is no car of this register.')).toBeVisible();
    await expect(journal.entries).toHaveCount(0);
  });

  test("the pages are sound on a phone and on a desk", async ({ page }) => {
    const journal = new JournalPage(page);
    for (const open of [() => journal.open("?check=chain"), () => journal.openOf("S1-0004")]) {
      await open();
      for (const width of [360, 1440]) {
        await page.setViewportSize({ width, height: 800 });
        expect(await unsoundness(page), `${page.url()} at ${width} px`).toEqual([]);
      }
    }
  });
});

test.describe("for the scrutineer", () => {
  test.use({ as: "scrutineer" });

  test("every member reads the journal, without keepers; the chain is for who answers for the register", async ({
    page,
  }) => {
    const journal = await new JournalPage(page).openOf("S1-0004");
    await expect(journal.entries.first()).toBeVisible();
    expect(await page.content()).not.toContain("Hjelmvik");
    await journal.open("?check=chain");
    await expect(journal.entries).toHaveCount(50);
    await expect(journal.check).toBeHidden();
  });
});
