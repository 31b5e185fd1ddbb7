import { unsoundness } from "./pages/soundness";
import { TimelinePage } from "./pages/timeline.page";
import { expect, test } from "./world";

/**
 * S1-0004 by its row in the demo's register file (prisma/demo): built 3/68 without a rear bar, a 16 mm one and a 20 mm
 * front bar since 9/2004, measured on 11 July 2021. Of September 2004 no day is known, so the change counts from the 30th.
 */
const car = "S1-0004";
const rearBar = ["Rear suspension", "Rear anti-roll bar diameter"] as const;

test.describe("for the registrar", () => {
  test.use({ as: "registrar" });

  test("dragged by the keyboard to before a modification, the page shows what was there before it", async ({
    page,
  }) => {
    const timeline = await new TimelinePage(page).open(car, "?on=2004-09-30");
    await expect(timeline.heading("30 September 2004")).toBeVisible();
    await expect(timeline.value(...rearBar)).toHaveText(/16\smm/);

    await timeline.handle.focus();
    await expect(timeline.handle).toHaveAttribute("aria-valuetext", "30 September 2004");
    await page.keyboard.press("ArrowLeft");
    await expect(timeline.heading("30 August 2004")).toBeVisible();
    await expect(timeline.value(...rearBar)).toHaveText(/not fitted/);
    await expect(timeline.day).toHaveValue("2004-08-30");
    // The address follows, so that what is shown can be sent to somebody.
    await expect(page).toHaveURL(/\/timeline\?on=2004-08-30$/);
    await page.reload();
    await expect(timeline.value(...rearBar)).toHaveText(/not fitted/);

    await timeline.handle.focus();
    await page.keyboard.press("Home");
    await expect(timeline.heading("1 January 1968")).toBeVisible();
    await expect(page.getByText("Not built yet on this day")).toBeVisible();
  });

  test("within the month of which no day is known both are told, and no day is made up", async ({ page }) => {
    const timeline = await new TimelinePage(page).open(car, "?on=2004-09-15");
    await expect(timeline.value(...rearBar)).toHaveText(/not fitted/);
    await expect(timeline.doubts).toContainText("Rear anti-roll bar diameter: not fitted, or 16 mm (9/2004)");
    await timeline.open(car, "?on=2010-01-01");
    await expect(timeline.doubts).toBeHidden();
    await expect(page.getByText("Modified 9/2004").first()).toBeVisible();
    expect(await page.getByRole("main").textContent()).not.toMatch(/30 Sep(tember)? 2004/);
  });

  test("a measured value has its verdict in words, its bracket and its uncertainty", async ({ page }) => {
    await new TimelinePage(page).open(car, "?on=2021-07-11");
    const row = page
      .getByRole("region", { name: /^6\s*Settings$/ })
      .getByRole("row", { name: /^Front camber, left / });
    await expect(row).toContainText("outside limits");
    await expect(row).toContainText(/± [\d.]+', k = 2/);
    await expect(row.locator("svg").first()).toBeVisible();
    await expect(page.getByRole("main")).toContainText("cannot tell");
    await expect(page.getByRole("main")).toContainText("inside limits");
  });

  test("the whole life stands in a table too, in order, each date as the record has it", async ({ page }) => {
    const timeline = await new TimelinePage(page).open(car);
    const when = await timeline.life.locator("tbody th").allTextContents();
    expect(when.indexOf("3/68")).toBe(0);
    expect(when.indexOf("9/2004")).toBeGreaterThan(0);
    expect(when.indexOf("11 Jul 2021")).toBeGreaterThan(when.indexOf("9/2004"));
    await expect(timeline.life).toContainText("Zoë Hjelmvik");
  });

  test("what was believed on a day before the register knew the car is nothing, and says so", async ({
    page,
  }) => {
    const timeline = await new TimelinePage(page).open(car);
    await timeline.believed.fill("2020-01-01");
    await timeline.show.click();
    await expect(page).toHaveURL(/believed=2020-01-01/);
    await expect(
      page.getByText("The register did not know of this car on 1 January 2020 (UTC)."),
    ).toBeVisible();
    await page.getByRole("link", { name: "Show it as the record stands now" }).click();
    await expect(timeline.life).toBeVisible();
  });

  test("a day that is none is told, and today is shown", async ({ page }) => {
    await new TimelinePage(page).open(car, "?on=31.2.1974");
    await expect(page.getByText("“31.2.1974” is no day of this car’s life")).toBeVisible();
  });

  test("the page is sound on a phone and on a desk, and on paper has the table but nothing to press", async ({
    page,
  }) => {
    const timeline = await new TimelinePage(page).open(car, "?on=2004-09-15&since=1990-01-01");
    for (const width of [360, 1440]) {
      await page.setViewportSize({ width, height: 800 });
      expect(await unsoundness(page), `at ${width} px`).toEqual([]);
    }
    await page.emulateMedia({ media: "print" });
    await expect(timeline.handle).toBeHidden();
    await expect(timeline.show).toBeHidden();
    await expect(timeline.life).toBeVisible();
  });
});

test.describe("for the scrutineer", () => {
  test.use({ as: "scrutineer" });

  test("the life is told without its keepers, in no part of what is sent", async ({ page }) => {
    const timeline = await new TimelinePage(page).open(car);
    await expect(timeline.life).toContainText("9/2004");
    expect(await page.content()).not.toContain("Hjelmvik");
  });
});

test.describe("without a script", () => {
  test.use({ as: "registrar", javaScriptEnabled: false });

  test("a form goes to any day", async ({ page }) => {
    const timeline = await new TimelinePage(page).open(car);
    await expect(timeline.handle).toBeHidden();
    await timeline.day.fill("2004-08-30");
    await timeline.show.click();
    await expect(timeline.heading("30 August 2004")).toBeVisible();
    await expect(timeline.value(...rearBar)).toHaveText(/not fitted/);
    await page.getByRole("link", { name: "What came next" }).click();
    await expect(timeline.heading("30 September 2004")).toBeVisible();
    await expect(timeline.value(...rearBar)).toHaveText(/16\smm/);
  });
});
