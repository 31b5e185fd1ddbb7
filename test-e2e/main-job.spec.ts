import { expect, test } from "@playwright/test";
import { Desk, type Who } from "./pages/desk.page";
import { readPdf } from "./pages/pdf";

const track = "/club/sandvaer/event/kvitnes-track-day";

const printers: readonly (readonly [Who, string, number])[] = [
  ["registrar", track, 42],
  ["scrutineer", track, 42],
  ["fleet", "/club/grusvik/event/season-check", 14],
];

for (const [who, path, sheets] of printers) {
  test(`the ${who} prints the whole event's sheets in running-number order`, async ({ page }) => {
    await new Desk(page).open(who, path);
    await expect(page.getByRole("button", { name: `Print ${sheets} sheets` })).toBeVisible();
    const answer = await page.request.get(`/api${path}/sheets.pdf?paper=A4`);
    expect(answer.status()).toBe(200);
    const { pages, bookmarks } = await readPdf(await answer.body());
    expect(bookmarks).toHaveLength(sheets);
    const numbers = bookmarks.map((title) => Number(/\d+/.exec(title)?.[0]));
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(pages.length).toBeGreaterThanOrEqual(sheets);
  });
}

test("the owner sees the event, and is told in words who may print its sheets", async ({ page }) => {
  await new Desk(page).open("owner", track);
  await expect(page.getByRole("heading", { name: "Kvitnes track day" })).toBeVisible();
  await expect(page.getByRole("button", { name: /^Print/ })).toHaveCount(0);
  const answer = await page.request.get(`/api${track}/sheets.pdf`);
  expect(answer.status()).toBe(403);
  expect(await answer.text()).toContain("This is for: scrutineer, registrar, fleet manager.");
});

test("a sheet names what the car's page says is different", async ({ page }) => {
  await new Desk(page).open("scrutineer", track);
  await page.getByRole("row").nth(1).getByRole("link").first().click();
  await expect(page.getByRole("heading", { name: "What differs from specification" })).toBeVisible();
  const rows = page.locator("section[aria-labelledby=deviations] tbody th");
  const labels = (await rows.allTextContents()).map(
    (text) =>
      text
        .replace(/^\d+\s*/, "")
        .split(",")[0]
        ?.trim() ?? "",
  );
  expect(labels.length).toBeGreaterThan(0);
  const answer = await page.request.get(`/api${track}/sheets.pdf?number=1`);
  const { pages } = await readPdf(await answer.body());
  const said = pages.join(" ").replace(/\s+/g, " ");
  for (const label of labels) expect(said).toContain(label);
});

test("a wrong password is refused in words and the address is kept", async ({ page }) => {
  await page.goto("/");
  await new Desk(page).fillSignIn("registrar@demo.test", "not the password");
  await expect(page.getByRole("alert").filter({ hasText: "do not belong together" })).toBeVisible();
  await expect(page.getByLabel("E-mail address")).toHaveValue("registrar@demo.test");
});

test("signing in leads to the page that was asked for, and signing out ends it", async ({ page }) => {
  await new Desk(page).signIn("registrar", "/club/sandvaer/car?q=0145");
  await expect(page).toHaveURL(/\/club\/sandvaer\/car\?q=0145$/);
  await page.locator("header details summary").last().click();
  await page.getByRole("button", { name: "Sign out" }).click();
  await page.goto("/club/sandvaer/car");
  await expect(page).toHaveURL(/\/sign-in/);
});

test("nobody is sent to another site after signing in", async ({ page }) => {
  await page.goto("/sign-in?next=https%3A%2F%2Felsewhere.example%2F");
  await new Desk(page).fillSignIn("registrar@demo.test", "walk round the car");
  await page.waitForURL(/\/club\/sandvaer$/);
});

test("a car is found by part of its number, however it is written", async ({ page }) => {
  await new Desk(page).open("registrar", "/club/sandvaer/car?q=s2%200145");
  await expect(page.getByText("2 cars found").first()).toBeVisible();
  await page.goto("/club/sandvaer/car?q=zzzz");
  await expect(page.getByText("No car fits.")).toBeVisible();
});

test("the register goes on past the first page", async ({ page }) => {
  await new Desk(page).open("registrar", "/club/sandvaer/car");
  await expect(page.getByText("50 of 412 cars shown").first()).toBeVisible();
  const first = await page.locator("tbody th").first().textContent();
  await page.getByRole("link", { name: /Next/ }).click();
  await expect(page.getByRole("link", { name: "From the beginning" })).toBeVisible();
  expect(await page.locator("tbody th").first().textContent()).not.toBe(first);
});

test("who keeps a car is shown to the registrar and to nobody else", async ({ browser }) => {
  const keepers = async (who: Who) => {
    const page = await (await browser.newContext()).newPage();
    await new Desk(page).open(who, "/club/sandvaer/car/S1-0001");
    const shown = await page.locator("dt", { hasText: /^Keeper$/ }).count();
    await page.context().close();
    return shown;
  };
  expect(await keepers("registrar")).toBe(1);
  expect(await keepers("owner")).toBe(0);
  expect(await keepers("scrutineer")).toBe(0);
});

for (const path of ["/club/grusvik", "/club/grusvik/car/GT-01", "/club/nowhere"]) {
  test(`a member of another club learns nothing at ${path}, not even whether it exists`, async ({ page }) => {
    await new Desk(page).open("registrar", path);
    await expect(page.getByText(/You are not a member of/)).toBeVisible();
  });
}

for (const [path, words] of [
  ["/club/sandvaer/car/S9-9999", 'No car "S9-9999" in this club\'s register.'],
  ["/club/sandvaer/event/none", 'There is no event "none" in this club.'],
] as const) {
  test(`${path} says in words that there is no such thing`, async ({ page }) => {
    await new Desk(page).open("registrar", path);
    await expect(page.getByText(words)).toBeVisible();
  });
}

test("everything works with scripts switched off", async ({ browser }) => {
  const page = await (await browser.newContext({ javaScriptEnabled: false })).newPage();
  await new Desk(page).open("scrutineer", track);
  await expect(page.getByRole("button", { name: "Print 42 sheets" })).toBeVisible();
  await page.goto("/club/sandvaer/car?q=0145");
  await expect(page.getByText("2 cars found").first()).toBeVisible();
  await page.context().close();
});

const pages = [
  "/club/sandvaer",
  "/club/sandvaer/car",
  "/club/sandvaer/car/S1-0070",
  "/club/sandvaer/event",
  track,
];
for (const width of [360, 1440]) {
  test(`no page scrolls sideways, breaks its own content policy or lacks a heading at ${width} px`, async ({
    page,
  }) => {
    const faults: string[] = [];
    page.on("console", (message) => {
      if (message.type() === "error") faults.push(message.text());
    });
    page.on("pageerror", (error) => faults.push(error.message));
    await page.setViewportSize({ width, height: 800 });
    await new Desk(page).open("registrar");
    for (const path of pages) {
      await page.goto(path);
      expect(await page.evaluate("document.documentElement.scrollWidth"), path).toBeLessThanOrEqual(width);
      expect(await page.locator("h1").count(), path).toBe(1);
    }
    expect(faults).toEqual([]);
  });
}

test("the health address answers when the service is ready", async ({ request }) => {
  const answer = await request.get("/api/health");
  expect(answer.status()).toBe(200);
});

test("a procedure called without signing in is refused with its code", async ({ request }) => {
  const input = encodeURIComponent(JSON.stringify({ club: "sandvaer" }));
  const answer = await request.get(`/api/trpc/event.list?input=${input}`);
  expect(answer.status()).toBe(401);
  expect(await answer.json()).toMatchObject({ error: { data: { refusal: { code: "NOT_SIGNED_IN" } } } });
});
