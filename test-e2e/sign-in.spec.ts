import { environment } from "./env";
import { DeskPage } from "./pages/desk.page";
import { SignInPage } from "./pages/sign-in.page";
import { expect, password, people, test } from "./world";

const { email } = people.registrar;

test("a wrong password is refused in words, and the address that was typed is kept", async ({ page }) => {
  const form = await new SignInPage(page).open();
  await form.send(email, "not the password");
  await expect(form.refusal).toContainText("That e-mail address and password do not belong together.");
  await expect(form.refusal).toContainText("Check both, and that capitals lock is off.");
  await expect(form.email).toHaveValue(email);
  await expect(form.password).toHaveValue("");
});

test("an address that is not known is refused in the same words as a wrong password", async ({ page }) => {
  const form = await new SignInPage(page).open();
  await form.send(email, "not the password");
  const known = await form.refusal.textContent();
  await form.send("nobody@demo.test", "not the password");
  await expect(form.email).toHaveValue("nobody@demo.test");
  expect(await form.refusal.textContent()).toBe(known);
});

test("after a refusal the right password still leads to the page that was asked for", async ({ page }) => {
  const wanted = "/club/sandvaer/car?q=s2+0145";
  await page.goto(wanted);
  const form = new SignInPage(page);
  await form.send(email, "not the password");
  await expect(form.refusal).toBeVisible();
  await form.send(email, password);
  await page.waitForURL(wanted);
  await expect(page.getByText("2 cars found").first()).toBeVisible();
});

test("the comparison that was asked for is kept across signing in", async ({ page }) => {
  const wanted = "/club/sandvaer/car/S1-0004?against=asBuilt";
  await page.goto(wanted);
  await new SignInPage(page).send(email, password);
  await page.waitForURL(wanted);
});

test("whoever is not signed in is sent to sign in, from every page, and is shown nothing else", async ({
  page,
}) => {
  const club = "/club/sandvaer";
  for (const path of [
    "/",
    club,
    `${club}/car`,
    `${club}/car/S1-0004`,
    `${club}/event`,
    `${club}/event/kvitnes-track-day`,
  ]) {
    await page.goto(path);
    await expect(page).toHaveURL(`/sign-in?next=${encodeURIComponent(path)}`);
    await expect(new SignInPage(page).heading).toBeVisible();
    await expect(page.getByRole("navigation")).toHaveCount(0);
    expect(await page.content()).not.toContain("Sandvær Register");
  }
});

test("signing in leads to no other host, however the address is dressed up", async ({ page, newAddress }) => {
  const elsewhere = [
    "https://elsewhere.example/",
    "//elsewhere.example/",
    "/\\elsewhere.example/",
    "\\\\elsewhere.example/",
    "/\t/elsewhere.example/",
    "javascript:alert(1)",
    "elsewhere.example",
  ];
  for (const next of elsewhere) {
    const answer = await page.request.post("/api/sign-in", {
      form: { email, password, next },
      maxRedirects: 0,
      headers: { "x-forwarded-for": newAddress(), origin: environment.origin },
    });
    expect(answer.status(), next).toBe(303);
    expect(answer.headers().location, next).toBe("/");
  }
  await page.context().clearCookies();
  const form = await new SignInPage(page).open("https://elsewhere.example/");
  await form.send(email, password);
  await page.waitForURL("/club/sandvaer");
});

test("whoever is signed in already goes straight to the page asked for, and never to another host", async ({
  page,
}) => {
  const form = await new SignInPage(page).open();
  await form.send(email, password);
  await page.waitForURL("/club/sandvaer");
  await form.open("/club/sandvaer/event");
  await expect(page).toHaveURL("/club/sandvaer/event");
  await form.open("//elsewhere.example/");
  await expect(page).toHaveURL("/club/sandvaer");
});

test("signing in works under whatever name the service is reached, but not from a page of another server", async ({
  page,
  complaints,
  newAddress,
}) => {
  complaints.allow(/asked of another server: http:\/\/localhost:\d+$/);
  const { port } = new URL(environment.origin);
  await page.goto(`http://localhost:${port}/club/sandvaer/event`);
  await new SignInPage(page).send(email, password);
  await page.waitForURL(`http://localhost:${port}/club/sandvaer/event`);

  const foreign = await page.request.post("/api/sign-in", {
    form: { email, password, next: "/" },
    maxRedirects: 0,
    headers: { "x-forwarded-for": newAddress(), origin: "https://elsewhere.example" },
  });
  expect(foreign.headers().location).toContain("/sign-in?refused=");
  expect(foreign.headers()["set-cookie"]).toBeUndefined();
});

test("signing out ends the session itself, not only this browser's memory of it", async ({
  page,
  browser,
}) => {
  await (await new SignInPage(page).open()).send(email, password);
  await page.waitForURL("/club/sandvaer");
  const kept = await page.context().storageState();
  await new DeskPage(page).signOut();
  await expect(page).toHaveURL("/sign-in");

  await page.goto("/club/sandvaer/car");
  await expect(page).toHaveURL(/\/sign-in\?/);
  const copied = await browser.newContext({ storageState: kept });
  const copy = await copied.newPage();
  await copy.goto("/club/sandvaer/car");
  await expect(copy).toHaveURL(/\/sign-in\?/);
  await copied.close();
});

test("a link or a foreign page cannot sign anybody out", async ({ page }) => {
  await (await new SignInPage(page).open()).send(email, password);
  await page.waitForURL("/club/sandvaer");
  const byLink = await page.request.get("/sign-out", { maxRedirects: 0 });
  expect(byLink.status()).toBe(405);
  await page.request.post("/sign-out", { headers: { origin: "https://elsewhere.example" }, maxRedirects: 0 });
  await page.reload();
  await expect(page).toHaveURL("/club/sandvaer");
});

test("whoever tries too often is told to wait, even with the right password, and others are not kept out", async ({
  page,
  newAddress,
}) => {
  const tryWith = (given: string, headers = {}) =>
    page.request.post("/api/sign-in", {
      form: { email, password: given, next: "/" },
      maxRedirects: 0,
      headers,
    });
  let tries = 0;
  let location = "";
  while (tries < 30 && !location.includes("refused=often")) {
    location = (await tryWith("not the password")).headers().location ?? "";
    tries++;
  }
  expect(location).toContain("refused=often");

  const form = await new SignInPage(page).open();
  await form.send(email, password);
  await expect(form.refusal).toContainText("Too many tries to sign in.");
  await expect(form.refusal).toContainText(/Wait \d+ seconds/);

  const elsewhere = await tryWith(password, { "x-forwarded-for": newAddress() });
  expect(elsewhere.headers().location).toBe("/");
});
