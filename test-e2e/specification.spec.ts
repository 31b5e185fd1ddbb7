import type { Page } from "@playwright/test";
import { importCars } from "./import-cars";
import { CarPage } from "./pages/car.page";
import { unsoundness } from "./pages/soundness";
import { SpecificationPage } from "./pages/specification.page";
import { expect, test } from "./world";

/** A series and a car of this file's own, in the fleet's club: nobody else counts on them. */
const club = "grusvik";
const mark = Date.now().toString(36).slice(-5);
const own = `trial-${mark}`;
const prefix = `T${mark.toUpperCase()}-`;
const chassis = `${prefix}0001`;

const alertOf = (page: Page) => page.getByRole("main").getByRole("alert");
const table = (text: string) => ({ name: "table.csv", mimeType: "text/csv", buffer: Buffer.from(text) });

test.describe("for the fleet manager", () => {
  test.use({ as: "fleetManager" });
  // Each goes on where the one before ended: a series, its first specification, its second.
  test.describe.configure({ mode: "serial" });

  test("a series is added, refused first for a number that cannot be", async ({ page }) => {
    await page.goto(`/club/${club}/specification/new-series`);
    await page.getByLabel("Name", { exact: true }).fill(`Trial ${mark}`);
    await page.getByLabel("Before the serial").fill(prefix);
    await page.getByLabel("Last serial").fill("99999");
    await page.getByLabel("Built from").fill("1974");
    await page.getByLabel("Built to").fill("1975");
    await page.getByRole("button", { name: "Add the series" }).click();
    await expect(alertOf(page)).toContainText("99999 has more than 4 digits");
    await page.getByLabel("Last serial").fill("40");
    await page.getByRole("button", { name: "Add the series" }).click();
    await page.waitForURL(`/club/${club}/specification/series/${own}`);
    await expect(page.getByText("Nothing is specified for this series")).toBeVisible();
  });

  test("its specification is read in from a table, once every cell reads, and made current", async ({
    page,
  }) => {
    test.slow();
    const specification = await new SpecificationPage(page).open(club, own);
    await specification.begin("an empty one");
    await page.getByRole("link", { name: "Read in a table" }).click();
    const look = page.getByRole("button", { name: "Show what would change" });
    await page
      .getByLabel("Table")
      .setInputFiles(table("Characteristic,Nominal,Upper\nfront.camber,steep,\n"));
    await look.click();
    await expect(alertOf(page)).toContainText("1 cell is wrong.");
    await expect(page.getByRole("row", { name: /B Nominal/ })).toContainText("steep");
    const good = "Characteristic,Nominal,Lower,Upper\nFront camber,0°,-1°,1°\nfront.disc.face,plain,,\n";
    await page.getByLabel("Table").setInputFiles(table(good));
    await look.click();
    await expect(page.getByText("2 added; 2 entries in all")).toBeVisible();
    await page.getByRole("button", { name: "Read it in" }).click();
    await page.waitForURL(/\/version\/1$/);
    await expect(specification.entry("Front camber")).toContainText("-1° to 1°");

    await specification.review.click();
    await expect(specification.moves).toContainText("No car is filed under this series yet.");
    await page.getByRole("button", { name: "Make it current" }).click();
    await expect(alertOf(page)).toContainText("Say why");
    await page.getByLabel("Why").fill("From the handbook");
    await page.getByRole("button", { name: "Make it current" }).click();
    await page.waitForURL(`/club/${club}/specification/series/${own}`);
    await expect(specification.lead).toContainText("version 1, current");
    const csv = await page.request.get(`/api/club/${club}/specification/${own}/1/specification.csv`);
    expect(await csv.text()).toContain("front.disc.face,Front disc face,,plain");
  });

  test("a limit edited in a draft moves the verdict it says it moves, on the car's page too", async ({
    page,
  }) => {
    test.slow();
    await importCars(club, `Chassis,Series,now: Front camber left\n${chassis},Trial ${mark},1°30'\n`);
    const car = await new CarPage(page).open(club, chassis);
    const camber = async () =>
      (await car.lines("specification")).find((line) => line.includes("Front camber, left"));
    expect(await camber()).toContain("outside limits");

    const specification = await new SpecificationPage(page).open(club, own);
    await specification.begin("a copy of version 1, current");
    await specification.change("Front camber");
    const upper = page.getByLabel("Upper limit");
    await upper.fill("-3°");
    await specification.save();
    await expect(alertOf(page)).toContainText("the lower limit -1° lies above the upper one -3°");
    await expect(upper).toHaveValue("-3°");
    await upper.fill("2°");
    await specification.save();
    await page.waitForURL(/\/version\/2$/);

    await specification.review.click();
    await expect(specification.changes).toContainText("Upper limit");
    await expect(specification.moves).toContainText("Looked at 1 car: 1 verdict moves, on 1 car.");
    const row = specification.moves.getByRole("row", { name: new RegExp(chassis) });
    await expect(row).toContainText("outside limits");
    await expect(row).toContainText("inside limits");
    // Nothing has moved yet.
    await car.open(club, chassis);
    expect(await camber()).toContain("outside limits");

    await specification.open(club, own, 2);
    await specification.review.click();
    await page.getByLabel("Why").fill("Bulletin 7 widens the limit");
    await page.getByRole("button", { name: "Make it current" }).click();
    await page.waitForURL(`/club/${club}/specification/series/${own}`);
    await expect(specification.lead).toContainText("version 2, current");
    await expect(specification.versions).toContainText("Bulletin 7 widens the limit");
    await expect(specification.versions).toContainText("Mårten Ørnhøi");
    await car.open(club, chassis);
    expect(await camber()).toBeUndefined();
  });

  test("two versions, or two series, are compared on a page of their own", async ({ page }) => {
    await page.goto(`/club/${club}/specification/compare?before=${own}@1&after=${own}@2`);
    const differs = page.getByRole("region", { name: "What differs" });
    await expect(differs).toContainText("1 entry says the same in both; 1 changed.");
    await expect(differs.getByRole("row", { name: /^Front camber/ })).toContainText("2°");
    await page.getByLabel("To", { exact: true }).selectOption({ label: "School car, version 1 (current)" });
    await page.getByRole("button", { name: "Compare" }).click();
    await expect(differs).toContainText(/\d+ added/);
  });

  test("a characteristic of the club's own can be specified like any other", async ({ page }) => {
    test.slow();
    const label = `Lamps ${mark}`;
    await page.goto(`/club/${club}/specification/new-characteristic`);
    await page.getByLabel("Label", { exact: true }).fill(label);
    await page.getByLabel("What is meant").fill("Lamps below the bumper.");
    await page.getByLabel("Choice 1", { exact: true }).fill("Round");
    await page.getByRole("button", { name: "Add the characteristic" }).click();
    await expect(alertOf(page)).toContainText("to be put right");
    await page.getByLabel("Choice 2", { exact: true }).fill("Square");
    await page.getByRole("button", { name: "Add the characteristic" }).click();
    await page.waitForURL(/\/specification\/characteristic$/);
    await expect(page.getByRole("link", { name: label })).toBeVisible();

    const specification = await new SpecificationPage(page).open(club, own);
    await specification.begin("a copy of version 2, current");
    await page.getByRole("link", { name: "Add an entry" }).click();
    await page.getByLabel("Characteristic").selectOption({ label });
    await page.getByRole("button", { name: "Go on" }).click();
    await page.getByLabel("Nominal").selectOption({ label: "Square" });
    await specification.save();
    await page.waitForURL(/\/version\/3$/);
    await expect(specification.entry(label)).toContainText("Square");
  });

  test("the pages stand on a telephone as on a desk", async ({ page }) => {
    test.slow();
    const draft = `/series/${own}/version/3`;
    for (const path of [
      "",
      `/series/${own}`,
      `/series/${own}/change`,
      draft,
      `${draft}/entry?characteristic=front.camber`,
      `${draft}/review`,
      `${draft}/import`,
      `/compare?before=${own}@1&after=${own}@2`,
      "/characteristic",
      "/new-characteristic",
      "/new-series",
    ]) {
      await page.goto(`/club/${club}/specification${path}`);
      for (const width of [360, 1440]) {
        await page.setViewportSize({ width, height: 800 });
        expect(await unsoundness(page), `${path} at ${width} px`).toEqual([]);
      }
    }
  });
});

test.describe("for an owner", () => {
  test.use({ as: "owner" });

  test("a specification is read, with its limits drawn, and there is nothing to change", async ({ page }) => {
    const specification = await new SpecificationPage(page).open("sandvaer", "series-1");
    await expect(specification.entry("Front camber")).toContainText("-0°30' to 0°30'");
    await expect(specification.entry("Front camber").locator("svg")).toHaveCount(1);
    await expect(specification.entry("Front tyre size")).toContainText("175/70 R 13");
    await expect(page.getByRole("button", { name: "Begin a new version" })).toHaveCount(0);
    await page.goto("/club/sandvaer/specification/series/series-1/version/1/entry");
    await expect(page.getByText("This is for: registrar, fleet manager.")).toBeVisible();
  });
});
