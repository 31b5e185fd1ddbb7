import { answeredWith } from "./complaint";
import { DeskPage } from "./pages/desk.page";
import { EventPage } from "./pages/event.page";
import { type PackSheet, readPdf, sheetsOf } from "./pages/pack";
import { SignInPage } from "./pages/sign-in.page";
import { expect, grusvik, type Person, password, people, test } from "./world";

/** Running numbers as prisma/demo/event.ts gives them: every eighth is left free, visitors begin at 91. */
const runningNumbers = {
  "kvitnes-track-day": ["1-7", "9-15", "17-23", "25-31", "33-39", "41-45", "91-92"].flatMap(span),
  "season-check": ["1-7", "9-15"].flatMap(span),
} as const;

function span(words: string): readonly string[] {
  const [from = 0, to = 0] = words.split("-").map(Number);
  return Array.from({ length: to - from + 1 }, (_, index) => String(from + index));
}

/**
 * Worked by hand from the rows of the demo's register files and its specifications (prisma/demo): 9.6 mm where the
 * disc may not be below 11 mm; 29 psi where at most 26 psi; 2°08' and 2.4° = 2°24' where at least 3°00'. A bar of
 * 22 mm where 20 mm is specified; rod ends where rubber is.
 */
const cars = {
  "kvitnes-track-day": {
    chassis: "S3-0237",
    count: "2 parts, 4 settings (figures below)",
    lines: ["Harness: Six-point harness; added"],
    settings: [
      "Front disc thickness at least 11 mm 12.2 mm inside limits 9.6 mm outside limits",
      "Front tyre pressure 20 psi to 26 psi 29 psi outside limits",
      "Front castor 3°00' to 4°00' 2°08' outside limits 2°24' outside limits",
    ],
    inOrder: "Front camber",
    keeper: "Grindstø",
  },
  "season-check": {
    chassis: "GT-09",
    count: "2 parts, 3 settings (figures below)",
    lines: [
      "Front anti-roll bar diameter: 22 mm for 20 mm; +2 mm, × 1.10; different part",
      "Rear drop link joint: Rod end for Rubber bush; different part",
    ],
    settings: [
      "Front disc thickness at least 11 mm 11.3 mm inside limits 10.5 mm outside limits",
      "Front castor 3°15' to 3°45' 3°48' cannot tell",
    ],
    inOrder: "Rear anti-roll bar diameter",
    keeper: "Keeper",
  },
} as const;

/** Signs in, and goes to the coming event by the links a person would follow. */
async function reachEvent(desk: DeskPage, who: Person): Promise<EventPage> {
  const { page } = desk;
  await (await new SignInPage(page).open()).send(who.email, password);
  if (who.role === people.scrutineer.role) await desk.choose("Grusvik Track School");
  await page.waitForURL(`/club/${who.club}`);
  await expect(desk.you).toContainText(who.name);
  await desk.goTo("Events");
  const coming = page.getByRole("listitem").filter({ hasText: `${who.entries} cars entered` });
  await coming.getByRole("link").click();
  await page.waitForURL(`/club/${who.club}/event/${who.event}`);
  const event = new EventPage(page);
  await expect(event.entries).toHaveCount(who.entries);
  return event;
}

/** The sheet says of the car what was worked out by hand, and no more than may be told in a paddock. */
function expectWorked({ pages }: PackSheet, car: (typeof cars)[keyof typeof cars]): void {
  const [front = "", ...further] = pages;
  const from = front.indexOf("What is different");
  const different = front.slice(from, front.indexOf("Settings against limits"));
  expect(front).toContain(car.chassis);
  expect(front).toContain(car.count);
  for (const line of car.lines) expect(different).toContain(line);
  for (const line of car.settings) expect(front).toContain(line);
  expect(different).not.toContain(car.inOrder);
  for (const page of further) expect(page).toContain(car.chassis);
  expect(further.at(-1)).toContain("Scrutineer, name and signature");
  expect(pages.join(" ")).not.toContain(car.keeper);
}

// The scrutineer is of both clubs: a whole pack here of the smaller, single sheets below of the other.
for (const who of [people.registrar, { ...people.scrutineer, ...grusvik }, people.fleetManager]) {
  test(`the ${who.role} signs in, finds the event and prints one sheet a car, in running-number order`, async ({
    page,
  }) => {
    const event = await reachEvent(new DeskPage(page), who);
    await expect(event.print).toHaveText(`Print ${who.entries} sheets`);
    expect(await event.runningNumbers()).toEqual(runningNumbers[who.event]);
    const drivers = await event.entries.locator(".entry-driver").allInnerTexts();
    // Letters of three alphabets: they must print as they are written.
    expect(drivers).toEqual(expect.arrayContaining(["Σοφία Καλβόνη", "Ewa Grzędowin", "Tõnu Ångskär"]));

    const { status, type, bytes } = await event.printAll();
    expect({ status, type }).toEqual({ status: 200, type: "application/pdf" });
    const pack = await readPdf(bytes);
    const sheets = sheetsOf(pack);
    expect(sheets.map(({ number }) => number)).toEqual(runningNumbers[who.event]);
    expect(pack.pages).toHaveLength(sheets.reduce((sum, { pages }) => sum + pages.length, 0));
    expect(pack.bookmarks).toHaveLength(who.entries);
    for (const [index, driver] of drivers.entries()) expect(sheets[index]?.pages[0]).toContain(driver);

    const car = cars[who.event];
    const number = await event.runningNumberOf(car.chassis);
    expectWorked(sheets.find((sheet) => sheet.number === number) ?? { number, pages: [] }, car);
  });
}

test.describe("for the scrutineer", () => {
  test.use({ as: "scrutineer" });

  test("one car's sheet is printed from its row; a car that is not on the register has a sheet too", async ({
    page,
  }) => {
    const car = cars["kvitnes-track-day"];
    const event = await new EventPage(page).open("sandvaer", "kvitnes-track-day");
    const number = await event.runningNumberOf(car.chassis);
    const [sheet, ...others] = sheetsOf(await readPdf((await event.printOne(number)).bytes));
    expect(sheet?.number).toBe(number);
    expect(others).toEqual([]);
    expectWorked(sheet ?? { number, pages: [] }, car);

    const [visitor] = sheetsOf(await readPdf((await event.printOne("92")).bytes));
    expect(visitor?.pages[0]).toContain("small saloon, 1966");
  });

  test("the scrutineer works in each of their clubs, and in each sees only that club's event", async ({
    page,
  }) => {
    const desk = await new DeskPage(page).open("sandvaer");
    await expect(desk.steps).toHaveText(["Print 42 sheets for Kvitnes track day"]);
    await page.getByRole("banner").getByText("Sandvær Register", { exact: true }).click();
    await page.getByRole("link", { name: "Grusvik Track School", exact: true }).click();
    await expect(page).toHaveURL("/club/grusvik");
    await expect(desk.steps).toHaveText(["Print 14 sheets for Season check"]);
  });
});

test("the owner reaches the event, is offered nothing to print, and at a sheet's address is told in words for whom it is", async ({
  page,
  complaints,
}) => {
  complaints.allow(answeredWith(403));
  // The browser shows the refusal as bare text, and asks for a mark to put beside its address.
  complaints.allow(/status of 404 .*\/favicon\.ico\)$/);
  const event = await reachEvent(new DeskPage(page), people.owner);
  await expect(event.print).toHaveCount(0);
  await expect(page.getByText("Print sheet")).toHaveCount(0);

  const answer = await page.goto("/api/club/sandvaer/event/kvitnes-track-day/sheets.pdf?number=1");
  expect(answer?.status()).toBe(403);
  await expect(
    page.getByText("This is for: scrutineer, registrar, fleet manager. You are: owner."),
  ).toBeVisible();
  await expect(page.getByText("Ask the registrar to do it, or to give you the role.")).toBeVisible();
});
