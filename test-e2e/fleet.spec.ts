import { FleetPage } from "./pages/fleet.page";
import { expect, test } from "./world";

test.describe("for the registrar", () => {
  test.use({ as: "registrar" });

  test("a characteristic's picture shows what its table says, and a car that stands apart is one press away", async ({
    page,
  }) => {
    const fleet = await new FleetPage(page).open("sandvaer");
    await fleet.characteristic("Front tyre pressure");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Front tyre pressure");
    expect(await fleet.drawnCounts("spread")).toEqual(await fleet.tabledCounts("Values by class"));
    await fleet.choose("Series", "Series 2");
    await expect(page).toHaveURL(/series=series-2/);
    expect(await fleet.drawnCounts("spread")).toEqual(await fleet.tabledCounts("Values by class"));
  });

  test("what goes with drilled discs is counted by value, with counts that add up", async ({ page }) => {
    await page.goto("/club/sandvaer/fleet/characteristic/front.disc.face");
    await page
      .getByRole("combobox", { name: "Cars on which it" })
      .selectOption({ label: "is cross-drilled" });
    await page.getByRole("button", { name: "Count" }).click();
    await expect(page.getByText(/Cars on which front disc face is Cross-drilled/)).toBeVisible();
    const row = page
      .getByRole("table", { name: /^What else differs/ })
      .getByRole("row")
      .nth(1);
    await expect(row).toContainText(/\d+ of \d+ cars?/);
  });

  test("a condition is taken from the register to what has been changed on those cars", async ({ page }) => {
    await page.goto("/club/sandvaer/car?where=number_rear.antiRollBar.diameter_gt_0.015");
    await page.getByRole("link", { name: "What has been changed on these cars" }).click();
    await expect(page.getByText(/rear anti-roll bar diameter is above 15 mm/)).toBeVisible();
    const row = page.getByRole("row", { name: /Rear anti-roll bar diameter/ });
    await expect(row).toContainText(/\d+ of \d+ cars, \d+ %/);
  });

  test("how many differ leads to just those cars, and a few of them are put side by side", async ({
    page,
  }) => {
    await page.goto("/club/sandvaer/fleet/modification");
    const count = page
      .getByRole("row", { name: /^Front caliper bolt thread/ })
      .getByRole("link", { name: /\d+ of/ });
    const differ = /^\d+/.exec((await count.textContent()) ?? "")?.[0] ?? "none";
    await count.click();
    await expect(page.getByRole("heading", { level: 1, name: "Register" })).toBeVisible();
    await expect(page.getByText(`${differ} cars found`).first()).toBeVisible();
    await page.goto(`${page.url()}&q=S4-00`);
    const beside = page.getByRole("link", { name: /^These \d cars side by side/ });
    const cars = /\d/.exec((await beside.textContent()) ?? "")?.[0] ?? "none";
    await beside.click();
    await expect(page.getByText(new RegExp(`^${cars} cars`)).first()).toBeVisible();
  });

  test("words that name a characteristic lead to it as they are typed", async ({ page }) => {
    await page.goto("/club/sandvaer/car");
    await page.getByRole("searchbox", { name: "Find a car" }).pressSequentially("damper");
    const note = page.getByText(/^“damper” is also what characteristics are called/);
    await expect(note).toBeVisible();
    await note.getByRole("link").first().click();
    await expect(page.getByRole("heading", { level: 1 })).toContainText(/damper/i);
  });

  test("built, known of and in use are told by series, with whom to ask by name", async ({ page }) => {
    await page.goto("/club/sandvaer/fleet/survival");
    await expect(page.getByRole("row", { name: /^Series 1 180 \d+ \d+ %/ })).toBeVisible();
    const thin = page.getByRole("table", { name: /^The thinnest records/ });
    await expect(thin.getByRole("row")).toHaveCount(21);
  });
});

test.describe("for the owner", () => {
  test.use({ as: "owner" });

  test("what others run is told without naming a car of theirs, and nobody's keeper", async ({ page }) => {
    await page.goto("/club/sandvaer/garage");
    await page
      .getByRole("link", { name: /^See what others of/ })
      .first()
      .click();
    await expect(page.getByRole("heading", { level: 1, name: "What others run" })).toBeVisible();
    await expect(page.getByRole("table").getByRole("row").nth(1)).toContainText(/\d+ of \d+ cars?/);
    await page.goto("/club/sandvaer/fleet/survival");
    await expect(page.getByText("through the registrar, who knows the keeper").first()).toBeVisible();
  });
});

test.describe("for the fleet manager", () => {
  test.use({ as: "fleetManager" });

  test("fourteen cars are held against one, and only what differs is shown", async ({ page }) => {
    await page.goto("/club/grusvik/fleet/compare");
    await page.getByRole("combobox", { name: "or every car of" }).selectOption({ index: 1 });
    await page.getByRole("textbox", { name: "Against" }).fill("GT-01");
    await page.getByRole("button", { name: "Compare" }).click();
    await expect(page.getByText("14 cars, held against GT-01")).toBeVisible();
    await expect(page.getByText("the reference")).toBeVisible();
    await expect(
      page.getByRole("table", { name: /^What differs, worst first/ }).getByRole("row"),
    ).not.toHaveCount(0);
  });

  test("the calendar goes by the keyboard from day to day and month to month", async ({ page }) => {
    const month = new Date().toISOString().slice(0, 7);
    await page.goto(`/club/grusvik/fleet/due/calendar?month=${Number(month.slice(0, 4)) + 1}-12`);
    const days = page.locator("a[data-day]");
    await days.first().focus();
    await page.keyboard.press("PageUp");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(
      `November ${Number(month.slice(0, 4)) + 1}`,
    );
  });

  test("a private link is shown once, read by a calendar program, and dead once it is taken back", async ({
    page,
    request,
  }) => {
    await page.goto("/club/grusvik/fleet/due/link");
    await page.getByRole("textbox", { name: "Which calendar will read it" }).fill("Workshop wall");
    await page.getByRole("button", { name: "Make the link" }).click();
    const told = page.getByText(/it is not shown again/);
    await expect(told).toBeVisible();
    const address = /https?:\S+\.ics/.exec((await told.textContent()) ?? "")?.[0] ?? "";
    const path = new URL(address).pathname;
    const read = await request.get(path);
    expect(read.headers()["content-type"]).toContain("text/calendar");
    const text = await read.text();
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(text).toContain("SUMMARY:GT-01: inspection");
    await page.goto("/club/grusvik/fleet/due/link");
    await expect(page.getByText(address)).toHaveCount(0);
    await page.getByRole("button", { name: "Take “Workshop wall” back" }).click();
    await expect(page.getByText(/^Taken back/)).toBeVisible();
    await expect(page.getByText("Workshop wall")).toHaveCount(0);
    expect((await request.get(path)).status()).toBe(404);
  });
});
