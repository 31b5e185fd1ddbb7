import { ImportPage } from "./pages/import.page";
import { expect, grusvik, test } from "./world";

const { club } = grusvik;

/** A list as somebody keeps it: other headings, a bare number, a row that cannot be read, dates out of order. */
const list = [
  "VIN;Front bar;Year built;Owned since;Shoe size",
  "IMP-01;16;1971;1969;44",
  "IMP-02;5/8 in;c. 1972;;",
  "IMP-03;fat;1973;;",
].join("\n");

// A club has one import at a time: one test after another.
test.describe.configure({ mode: "default" });

for (const script of [true, false]) {
  test.describe(script ? "with a script" : "without a script", () => {
    test.use({ as: "fleetManager", javaScriptEnabled: script });
    const own = script ? list : list.replaceAll("IMP-", "IMQ-").replace("Shoe size", "Shoe");
    const first = script ? "IMP-01" : "IMQ-01";

    test("a list is read in, column by column, looked at before, and undone as one step", async ({
      page,
    }) => {
      const desk = await new ImportPage(page).open(club);
      await desk.send("our list.csv", own);
      await expect(page.getByRole("heading", { level: 1 })).toHaveText("our list.csv");
      await expect(desk.takenFor("A", "VIN")).toHaveValue("Chassis");
      await expect(desk.takenFor("B", "Front bar")).toHaveValue("now: Front anti-roll bar diameter");
      await desk.takenFor("E", script ? "Shoe size" : "Shoe").fill("leave out");
      await desk.lookThrough.click();
      await expect(desk.refusal).toContainText("numbers such as 16 stand here without a unit");
      await expect(desk.takenFor("E", script ? "Shoe size" : "Shoe")).toHaveValue("leave out");
      await desk.unit("B", "Front bar").selectOption("mm");
      await desk.lookThrough.click();
      await desk.waitFor("2 cars would be added, 0 changed, 1 row left out");
      await desk.waitFor(/kept since 1969, before it was built/);
      const problems = page.waitForEvent("download");
      await page.getByRole("link", { name: "Download them as CSV" }).click();
      expect((await problems).suggestedFilename()).toBe("rows-left-out.csv");
      await page.getByRole("button", { name: "Read in 2 cars" }).click();
      await desk.waitFor("2 cars added, 0 changed, 1 row left out");
      await page.goto(`/club/${club}/car/${first}`);
      await expect(page.getByRole("main")).toContainText("16 mm");
      await page.goBack();
      await desk.undo.click();
      await desk.waitFor("undone");
      const gone = await page.goto(`/club/${club}/car/${first}`);
      expect(gone?.status()).toBe(200);
      await expect(page.getByRole("main")).toContainText(`No car "${first}"`);
    });
  });
}

test.describe("a file that cannot be read", () => {
  test.use({ as: "fleetManager" });

  test("is refused in words, whatever it is called, and leaves nothing", async ({ page }) => {
    const desk = await new ImportPage(page).open(club);
    for (const [name, content, words] of [
      [
        "picture.xlsx",
        Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
        "it looks like a PNG picture",
      ],
      ["empty.csv", "\n", "is empty"],
      ["cut.xlsx", Buffer.from([0x50, 0x4b, 3, 4, 20, 0]), "cannot be read as a workbook"],
    ] as const) {
      await desk.send(name, content);
      await expect(desk.refusal).toContainText(words);
    }
    await expect(page.getByRole("link", { name: "picture.xlsx" })).toHaveCount(0);
  });
});

test.describe("somebody without the role", () => {
  test.use({ as: "owner" });

  test("is told who may", async ({ page }) => {
    await page.goto("/club/sandvaer/import");
    await expect(page.getByRole("main")).toContainText("This is for: registrar, fleet manager.");
  });
});
