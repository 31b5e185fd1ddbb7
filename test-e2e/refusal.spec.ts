import { answeredWith } from "./complaint";
import { OutcomePage } from "./pages/outcome.page";
import { expect, people, test } from "./world";

/** A name nobody has, as long as the one it is put in place of. */
const invented = { grusvik: "nowhere", "GT-04": "GT-44", "season-check": "season-check-none" } as const;

test.describe("for the registrar of another club", () => {
  test.use({ as: "registrar" });

  test("every page of another club is refused in the same words as those of a club that does not exist", async ({
    page,
  }) => {
    const outcome = new OutcomePage(page);
    for (const path of ["", "/car", "/car/GT-04", "/event", "/event/season-check"]) {
      await page.goto(`/club/grusvik${path}`);
      const said = await outcome.words();
      expect(said).toContain('You are not a member of "grusvik". Ask its registrar for an invitation.');
      await expect(page.getByRole("banner")).toHaveCount(0);
      await outcome.showsNothingInside();
      expect(await page.content()).not.toContain("Grusvik Track School");
      await page.goto(`/club/${invented.grusvik}${path.replace("GT-04", invented["GT-04"])}`);
      expect(await outcome.words()).toBe(said.replace("grusvik", invented.grusvik));
    }
    await page.getByRole("link", { name: "Go to your clubs" }).click();
    await page.waitForURL("/club/sandvaer");
  });

  test("a car of another club is refused in the same words as one that nobody has", async ({ page }) => {
    const outcome = new OutcomePage(page);
    await page.goto("/club/sandvaer/car/GT-04");
    const said = await outcome.words();
    expect(said).toContain(`No car "GT-04" in this club's register. Look for it by another number or mark.`);
    await outcome.showsNothingInside();
    await page.goto(`/club/sandvaer/car/${invented["GT-04"]}`);
    expect(await outcome.words()).toBe(said.replace("GT-04", invented["GT-04"]));
  });

  test("an event of another club is refused in the same words as one that nobody holds", async ({ page }) => {
    const outcome = new OutcomePage(page);
    await page.goto("/club/sandvaer/event/season-check");
    const said = await outcome.words();
    expect(said).toMatch(
      /There is no event "season-check" in this club\. Events: [a-z0-9, -]*\bkvitnes-track-day\b/,
    );
    await outcome.showsNothingInside();
    await page.goto(`/club/sandvaer/event/${invented["season-check"]}`);
    expect(await outcome.words()).toBe(said.replace("season-check", invented["season-check"]));
  });

  test("neither sheets nor procedures of another club answer otherwise than those of a club that does not exist", async ({
    page,
  }) => {
    const asked = [
      (club: string) => `/api/club/${club}/event/season-check/sheets.pdf`,
      (club: string) =>
        `/api/trpc/car.page?input=${encodeURIComponent(JSON.stringify({ club, car: "GT-04" }))}`,
      (club: string) => `/api/trpc/event.list?input=${encodeURIComponent(JSON.stringify({ club }))}`,
      (club: string) => `/api/trpc/club.home?input=${encodeURIComponent(JSON.stringify({ club }))}`,
    ];
    for (const address of asked) {
      const there = await page.request.get(address("grusvik"));
      const nowhere = await page.request.get(address(invented.grusvik));
      expect(there.status(), address("grusvik")).toBe(403);
      expect(nowhere.status()).toBe(403);
      const said = await there.text();
      expect(said).toContain("You are not a member of");
      expect(said).not.toMatch(/stack|node_modules|GT-04|Grusvik Track School/);
      expect((await nowhere.text()).replaceAll(invented.grusvik, "grusvik")).toBe(said);
    }
  });

  test("an unknown car or event is refused in words, with the way on", async ({ page }) => {
    const outcome = new OutcomePage(page);
    for (const [path, words] of [
      ["/car/S9-9999", 'No car "S9-9999" in this club\'s register.'],
      ["/car/S2-0145~9", 'No car "S2-0145~9" in this club\'s register.'],
      ["/car/%3Cb%3E%26", 'No car "<b>&" in this club\'s register.'],
      ["/event/none", 'There is no event "none" in this club. Events: '],
    ] as const) {
      await page.goto(`/club/sandvaer${path}`);
      const said = await outcome.words();
      expect(said).toContain(words);
      if (path.startsWith("/event")) expect(said).toContain("kvitnes-track-day");
      await outcome.showsNothingInside();
    }
    await page.getByRole("link", { name: "Go to today" }).click();
    await page.waitForURL("/club/sandvaer");
  });

  test("an address that can name nothing is answered in words, not as a fault", async ({
    page,
    complaints,
  }) => {
    complaints.allow(answeredWith(404));
    const outcome = new OutcomePage(page);
    for (const path of [
      "/nothing",
      `/club/sandvaer/car/${"a".repeat(300)}`,
      `/club/sandvaer/event/${"a".repeat(300)}`,
      "/club/sandvaer/car/%00",
    ]) {
      const answer = await page.goto(path);
      expect(answer?.status(), path).toBe(404);
      expect(await outcome.words()).toContain("There is nothing at this address.");
      await outcome.showsNothingInside();
    }
  });

  test("control characters in a search, a cursor or a sheet's address are no fault", async ({ page }) => {
    for (const path of [
      "/club/sandvaer/car?q=%00S3-0237%07",
      "/club/sandvaer/car?after=%00",
      "/club/sandvaer/car?series=%00",
    ]) {
      const answer = await page.goto(path);
      expect(answer?.status(), path).toBe(200);
      await expect(page.getByRole("heading", { name: "Register", level: 1 })).toBeVisible();
    }
    const sheet = await page.request.get("/api/club/sandvaer/event/%00/sheets.pdf");
    expect(sheet.status()).toBe(404);
    expect(await sheet.text()).toContain("There is no event");
  });

  test("a running number that nobody has is refused in words, with those there are", async ({ page }) => {
    const answer = await page.request.get("/api/club/sandvaer/event/kvitnes-track-day/sheets.pdf?number=8");
    expect(answer.status()).toBe(404);
    expect(await answer.text()).toContain('The event "kvitnes-track-day" has no running number 8.');
    expect(await answer.text()).toContain("Running numbers: 1, 2, 3, 4, 5, 6, 7, 9, 10,");
  });
});

test.describe("for the fleet manager", () => {
  test.use({ as: "fleetManager" });

  test("the owners' club is as closed as the fleet is to its registrar", async ({ page }) => {
    await page.goto("/club/sandvaer/car/S1-0004");
    expect(await new OutcomePage(page).words()).toContain('You are not a member of "sandvaer".');
    await page.goto(`/club/${people.fleetManager.club}/car/S1-0004`);
    expect(await new OutcomePage(page).words()).toContain(`No car "S1-0004" in this club's register.`);
  });
});

test("nobody who is not signed in gets sheets or answers from procedures", async ({ request }) => {
  const sheets = await request.get("/api/club/sandvaer/event/kvitnes-track-day/sheets.pdf");
  expect(sheets.status()).toBe(401);
  expect(await sheets.text()).toContain("You are not signed in.");
  const input = encodeURIComponent(JSON.stringify({ club: "sandvaer" }));
  const answer = await request.get(`/api/trpc/event.list?input=${input}`);
  expect(answer.status()).toBe(401);
  expect(await answer.json()).toMatchObject({ error: { data: { refusal: { code: "NOT_SIGNED_IN" } } } });
});
