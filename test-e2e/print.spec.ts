import { CarPage } from "./pages/car.page";
import { EventPage } from "./pages/event.page";
import { readPdf } from "./pages/pack";
import { RegisterPage } from "./pages/register.page";
import { expect, test } from "./world";

test.use({ as: "registrar" });

test("a printed car's page has everything of the car, and nothing to press or to go by", async ({ page }) => {
  const car = await new CarPage(page).open("sandvaer", "S3-0237");
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("banner")).toBeHidden();
  await expect(page.getByRole("navigation", { name: "Pages" })).toBeHidden();
  await expect(car.compareWith).toBeHidden();
  await expect(car.copy).toBeHidden();
  await expect(page.getByRole("button").filter({ visible: true })).toHaveCount(0);
  await expect(page.getByRole("main").getByRole("link", { name: "Register" })).toBeHidden();
  await expect(page.getByRole("link", { name: "Skip to the content" })).toBeHidden();
  await expect(car.plan).toBeVisible();
  await expect(car.differences("specification").locator("tbody tr").filter({ visible: true })).toHaveCount(9);
});

test("the sheet of paper that leaves the printer says the same", async ({ page }) => {
  await new CarPage(page).open("sandvaer", "S3-0237");
  const { pages } = await readPdf(await page.pdf({ format: "A4" }));
  const text = pages.join(" ");
  for (const words of [
    "S3-0237",
    "Sandvær Series 3",
    "What differs from specification",
    "Front disc thickness",
  ])
    expect(text).toContain(words);
  expect(text).toContain("a competent mechanic, the organiser's regulations");
  for (const words of ["Sign out", "Compare with", "Skip to the content", "Copy"])
    expect(text).not.toContain(words);
});

test("a printed list of cars or of entries has no search, no form and no buttons", async ({ page }) => {
  const register = await new RegisterPage(page).open("sandvaer");
  await page.emulateMedia({ media: "print" });
  await expect(register.search).toBeHidden();
  await expect(register.next).toBeHidden();
  await expect(register.rows.filter({ visible: true })).toHaveCount(50);

  const event = await new EventPage(page).open("sandvaer", "kvitnes-track-day");
  await expect(event.print).toBeHidden();
  await expect(event.entries.getByText("Print sheet").filter({ visible: true })).toHaveCount(0);
  await expect(event.entries.filter({ visible: true })).toHaveCount(42);
});
