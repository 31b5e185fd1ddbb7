import { CarPage } from "./pages/car.page";
import { DeskPage } from "./pages/desk.page";
import { EventPage } from "./pages/event.page";
import { readPdf, sheetsOf } from "./pages/pack";
import { RegisterPage } from "./pages/register.page";
import { SignInPage } from "./pages/sign-in.page";
import { expect, password, people, test } from "./world";

test.use({ javaScriptEnabled: false });

test("the whole job is done with scripts switched off: sign in, find a car, read it, print its sheet, sign out", async ({
  page,
}) => {
  await page.goto("/club/sandvaer/car");
  await new SignInPage(page).send(people.registrar.email, password);
  await page.waitForURL("/club/sandvaer/car");

  const register = new RegisterPage(page);
  await register.choose("Series 3");
  await register.find("0237");
  expect(await register.chassis()).toEqual(["S3-0237"]);
  await register.car("S3-0237").click();
  await page.waitForURL("/club/sandvaer/car/S3-0237");

  const car = new CarPage(page);
  await expect(car.differences("specification").locator("tbody tr")).toHaveCount(9);
  // What needs a script is not offered.
  await expect(car.copy).toBeHidden();
  await car.leader("Brakes").click();
  await expect(car.assembly("Brakes")).toBeInViewport();
  await car.compareWith.getByRole("link", { name: "as built" }).click();
  await expect(page.getByRole("heading", { name: "What differs from as built" })).toBeVisible();

  const event = await new EventPage(page).open("sandvaer", "kvitnes-track-day");
  const number = await event.runningNumberOf("S3-0237");
  const { status, bytes } = await event.printOne(number);
  expect(status).toBe(200);
  expect(sheetsOf(await readPdf(bytes)).map((sheet) => sheet.number)).toEqual([number]);

  await new DeskPage(page).signOut();
  await expect(page).toHaveURL("/sign-in");
});

test("a refusal to sign in is told with scripts switched off", async ({ page }) => {
  const form = await new SignInPage(page).open();
  await form.send(people.registrar.email, "not the password");
  await expect(form.refusal).toContainText("do not belong together");
  await expect(form.email).toHaveValue(people.registrar.email);
});
