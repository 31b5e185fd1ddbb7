import { openWorld, type World } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bookOf } from "../characteristic";
import { compareCurrentValues } from "../current-value";
import { openOperator } from "../gate";
import { verifyJournal } from "../journal";
import { type ImportInput, importRegister } from "./index";

let world: World;

beforeAll(async () => {
  world = await openWorld();
}, 120_000);
afterAll(() => world?.close());

const ASOF = "2026-01-15";

function importCsv(lines: readonly string[], given: Partial<ImportInput> = {}, club = "ours") {
  const bytes = new TextEncoder().encode(lines.join("\n"));
  return openOperator(world.database, club, async (ctx) =>
    importRegister(ctx, {
      file: "register.csv",
      bytes,
      book: await bookOf(ctx),
      asOf: ASOF,
      dryRun: false,
      ...given,
    }),
  );
}

function carOf(chassisKey: string, claim = 1) {
  return world.inClub((db) =>
    db.car.findFirstOrThrow({
      where: { chassisKey, claim },
      include: {
        series: true,
        identities: { orderBy: { kind: "asc" } },
        statuses: { orderBy: { id: "asc" } },
        options: true,
        keeperships: { include: { keeper: true }, orderBy: { id: "asc" } },
        asBuilt: { orderBy: { id: "asc" } },
        modifications: { include: { changes: { orderBy: { id: "asc" } }, submission: true } },
        settingSheets: { include: { readings: { orderBy: { id: "asc" } } }, orderBy: { sequence: "asc" } },
        currentValues: true,
      },
    }),
  );
}

async function journalOf(carId: string) {
  const entries = await world.inClub((db) =>
    db.journalEntry.findMany({ where: { carId }, orderBy: { sequence: "asc" } }),
  );
  return entries.map(({ action, before, after, reason }) => ({ action, before, after, reason }));
}

const day = (iso: string) => new Date(`${iso}T00:00:00Z`);

const headings =
  "Chassis;Series;Engine no;Registration;Built;First registered;Status;Status since;Options;" +
  "Keeper;Keeper address;Keeper e-mail;Kept since;Recorded on;Measured on;" +
  "as built: Front anti-roll bar diameter;as built: Colour;now: Colour;now: Front anti-roll bar diameter;" +
  "now: Rear anti-roll bar diameter;now: front camber left;now: front camber right;now: Front tyre pressure [psi];" +
  "Remarks;Club magazine";

const first =
  "m1-011 R;Mark 1;KM 1011;GR 95837;c. 1971;3/72;in use;May 1980;h OD;" +
  "Åse Ørnhøi;Strandgata 7, Kvitnes;ase@example.test;2004;2018-05-21;2021-01-11;" +
  "9/16 in;Fjord blue;fjord-blue;15.9 mm;none;-0°30';-0.4°;28;" +
  "Two spellings;no. 25";

const register = [headings, first, "M1-012;;;;;;;;;;;;;;;;;;;;;;;;"];

describe("reading in a register", () => {
  test("writes what its rows say, each where it belongs", async () => {
    const report = await importCsv(register);
    expect(report).toMatchObject({
      file: "register.csv",
      dryRun: false,
      rowsRead: 2,
      carsAdded: 2,
      carsChanged: 0,
      carsUnchanged: 0,
      refusedRows: [],
      doubtfulRows: [],
      unknownHeadings: ["Club magazine"],
    });
    const car = await carOf("M1011R");
    expect(car).toMatchObject({ chassis: "m1-011 R", claim: 1, serial: 11, version: 1 });
    expect(car.series?.slug).toBe("mark-1");
    expect(car.remarks).toBe("Two spellings\nClub magazine: no. 25");
  });

  test("keeps partial dates as written, with the days they allow", async () => {
    const car = await carOf("M1011R");
    expect(car).toMatchObject({
      builtText: "c. 1971",
      builtEarliest: day("1970-01-01"),
      builtLatest: day("1972-12-31"),
      firstRegisteredText: "3/72",
      firstRegisteredEarliest: day("1972-03-01"),
      firstRegisteredLatest: day("1972-03-31"),
    });
    expect(car.statuses).toMatchObject([{ status: "inUse", fromText: "May 1980", to: null }]);
  });

  test("keeps numbers, options by the series' codes, and the keeper apart from the car", async () => {
    const car = await carOf("M1011R");
    expect(car.identities.map(({ kind, number, numberKey }) => [kind, number, numberKey])).toEqual([
      ["engine", "KM 1011", "KM1011"],
      ["registration", "GR 95837", "GR95837"],
    ]);
    expect(car.options.map(({ code }) => code).sort()).toEqual(["H", "OD"]);
    expect(car.keeperships).toMatchObject([
      {
        fromText: "2004",
        to: null,
        keeper: { name: "Åse Ørnhøi", address: "Strandgata 7, Kvitnes", email: "ase@example.test" },
      },
    ]);
  });

  test("reads fractions and angles to SI and keeps them as entered", async () => {
    const car = await carOf("M1011R");
    const built = Object.fromEntries(car.asBuilt.map((value) => [value.characteristic, value]));
    // 1 in is 25.4 mm exactly (International yard and pound, 1959).
    expect(built["front.antiRollBar.diameter"]).toMatchObject({ entered: "9/16 in", valueKind: "quantity" });
    expect(built["front.antiRollBar.diameter"]?.number).toBeCloseTo(0.0254 * (9 / 16), 12);
    expect(built["body.colour"]).toMatchObject({ entered: "Fjord blue", text: "Fjord blue" });
  });

  test("records parts seen on the day they were seen, settings on the day they were measured", async () => {
    const { settingSheets: sheets, modifications } = await carOf("M1011R");
    expect(modifications).toEqual([]);
    expect(sheets.map(({ on, sequence }) => [on, sequence])).toEqual([
      [day("2018-05-21"), 1],
      [day("2021-01-11"), 2],
    ]);
    const seen = sheets[0]?.readings.map(({ characteristic, valueKind, entered }) => [
      characteristic,
      valueKind,
      entered,
    ]);
    expect(seen).toEqual([
      ["body.colour", "text", "fjord-blue"],
      ["front.antiRollBar.diameter", "quantity", "15.9 mm"],
      ["rear.antiRollBar.diameter", "absent", "none"],
    ]);
    const measured = sheets[1]?.readings.map(({ characteristic, side, number }) => [
      characteristic,
      side,
      number,
    ]);
    const psi = 6894.757293168; // NIST SP 811 (2008), B.8: pound-force per square inch
    expect(measured).toEqual([
      ["front.camber", "left", expect.closeTo((-30 / 60) * (Math.PI / 180), 12)],
      ["front.camber", "right", expect.closeTo(-0.4 * (Math.PI / 180), 12)],
      ["tyres.front.pressure", "left", expect.closeTo(28 * psi, 6)],
      ["tyres.front.pressure", "right", expect.closeTo(28 * psi, 6)],
    ]);
  });

  test("leaves empty what a row leaves empty", async () => {
    const car = await carOf("M1012");
    expect(car).toMatchObject({ serial: 12, builtText: null, firstRegisteredText: null, remarks: null });
    expect(car.series?.slug).toBe("mark-1");
    for (const list of [car.identities, car.statuses, car.options, car.keeperships, car.asBuilt]) {
      expect(list).toEqual([]);
    }
  });

  test("works the current values out, and the run and its source can be found again", async () => {
    const [stale, breaks] = await openOperator(world.database, "ours", async (ctx) => [
      await compareCurrentValues(ctx, await bookOf(ctx)),
      await verifyJournal(ctx),
    ]);
    expect(stale).toEqual([]);
    expect(breaks).toEqual([]);
    const { currentValues } = await carOf("M1011R");
    const bar = currentValues.find(({ characteristic }) => characteristic === "front.antiRollBar.diameter");
    expect(bar).toMatchObject({ origin: "reading", since: day("2018-05-21"), verdict: "periodOption" });
    const runs = await world.inClub((db) => db.importRun.findMany({ include: { source: true } }));
    expect(runs).toMatchObject([
      { fileName: "register.csv", rowsRead: 2, carsAdded: 2, carsChanged: 0, rowsRefused: 0 },
    ]);
    expect(runs[0]?.source).toMatchObject({ title: "Register file register.csv", kind: "registerFile" });
  });

  test("again changes nothing in any table, the journal included", async () => {
    const before = await world.fingerprint();
    const report = await importCsv(register);
    expect(report).toMatchObject({ carsAdded: 0, carsChanged: 0, carsUnchanged: 2 });
    expect(await world.fingerprint()).toEqual(before);
  });

  test("again in another order, or as of another day, changes nothing", async () => {
    const before = await world.fingerprint();
    await importCsv([headings, register[2] ?? "", first], { asOf: "2026-02-20" });
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("a dry run", () => {
  test("tells what would be done and writes nothing", async () => {
    const before = await world.fingerprint();
    const lines = [
      headings,
      first.replace("Fjord blue;fjord-blue", "Fjord blue;Ochre"),
      "M1-013;;;;;;;;;;;;;;;;;;;;;;;;",
    ];
    const report = await importCsv(lines, { dryRun: true });
    expect(report).toMatchObject({ dryRun: true, carsAdded: 1, carsChanged: 1, carsUnchanged: 0 });
    expect(await world.fingerprint()).toEqual(before);
  });
});

describe("a changed file", () => {
  const changed = first
    .replace("GR 95837", "NH 22")
    .replace("in use;May 1980", "laid up;6/2022")
    .replace("Åse Ørnhøi;Strandgata 7, Kvitnes;ase@example.test;2004", "Tõnu Bråtvær;;;2020")
    .replace("9/16 in;Fjord blue;", "5/8 in;Fjord blue;")
    .replace("2021-01-11", "2024-03-02")
    .replace("-0°30'", "-1°10'");

  test("changes what differs and nothing else", async () => {
    const before = await carOf("M1011R");
    const report = await importCsv([headings, changed]);
    expect(report).toMatchObject({ carsAdded: 0, carsChanged: 1, carsUnchanged: 0, refusedRows: [] });
    const car = await carOf("M1011R");
    expect(car.version).toBe(before.version + 1);
    expect(car).toMatchObject({ builtText: "c. 1971", remarks: before.remarks });
    expect(car.options).toEqual(before.options);
  });

  test("adds the new mark beside the old, ends the status and the keeper, and corrects as built by superseding", async () => {
    const car = await carOf("M1011R");
    expect(car.identities.map(({ number }) => number).sort()).toEqual(["GR 95837", "KM 1011", "NH 22"]);
    expect(car.statuses).toMatchObject([
      { status: "inUse", to: day("2022-06-30") },
      { status: "laidUp", fromText: "6/2022", to: null },
    ]);
    expect(car.keeperships.map(({ keeper, fromText, to }) => [keeper.name, fromText, to])).toEqual([
      ["Åse Ørnhøi", "2004", day("2020-12-31")],
      ["Tõnu Bråtvær", "2020", null],
    ]);
    const bars = car.asBuilt.filter(({ characteristic }) => characteristic === "front.antiRollBar.diameter");
    expect(bars.map(({ entered, supersededAt }) => [entered, supersededAt === null])).toEqual([
      ["9/16 in", false],
      ["5/8 in", true],
    ]);
  });

  test("adds the settings as measured again, also those found the same", async () => {
    const { settingSheets } = await carOf("M1011R");
    const last = settingSheets.at(-1);
    expect(last).toMatchObject({ on: day("2024-03-02"), sequence: 3 });
    expect(
      last?.readings.map(({ characteristic, side, entered }) => [characteristic, side, entered]),
    ).toEqual([
      ["front.camber", "left", "-1°10'"],
      ["front.camber", "right", "-0.4°"],
      ["tyres.front.pressure", "left", "28 psi"],
      ["tyres.front.pressure", "right", "28 psi"],
    ]);
  });

  test("is in the journal with before and after", async () => {
    const car = await carOf("M1011R");
    const [added, change, ...more] = await journalOf(car.id);
    expect(more).toEqual([]);
    expect(added).toMatchObject({
      action: "car.add",
      before: null,
      reason: "read in from register.csv, line 2",
      after: {
        chassis: "m1-011 R",
        series: "mark-1",
        serial: 11,
        built: "c. 1971",
        firstRegistered: "3/72",
        remarks: "given",
        keeper: "add",
      },
    });
    expect(change).toMatchObject({
      action: "car.change",
      before: {
        status: "inUse",
        statusSince: "May 1980",
        asBuilt: { "front.antiRollBar.diameter whole": "9/16 in" },
        now: { "front.camber left": "-0°30'" },
      },
      after: {
        status: "laidUp",
        statusSince: "6/2022",
        keeper: "replace",
        numbers: ["registration NH 22"],
        asBuilt: { "front.antiRollBar.diameter whole": "5/8 in" },
        now: { "front.camber left": "-1°10'" },
      },
    });
  });

  test("and the first one put no personal data into the journal", async () => {
    const all = JSON.stringify(
      await world.inClub((db) =>
        db.journalEntry.findMany({ select: { before: true, after: true, reason: true } }),
      ),
    );
    for (const personal of [
      "Ørnhøi",
      "Strandgata",
      "example.test",
      "Tõnu",
      "Bråtvær",
      "Two spellings",
      "no. 25",
    ]) {
      expect(all).not.toContain(personal);
    }
  });

  test("again changes nothing", async () => {
    const before = await world.fingerprint();
    await importCsv([headings, changed]);
    expect(await world.fingerprint()).toEqual(before);
  });

  test("that only puts a day right puts it right in place", async () => {
    const right = changed.replace("laid up;6/2022", "laid up;7/2022").replace(";;;2020;", ";Torget 2;;2019;");
    await importCsv([headings, right]);
    const car = await carOf("M1011R");
    expect(car.statuses.map(({ status, fromText }) => [status, fromText])).toEqual([
      ["inUse", "May 1980"],
      ["laidUp", "7/2022"],
    ]);
    expect(car.keeperships.map(({ keeper, fromText }) => [keeper.name, keeper.address, fromText])).toEqual([
      ["Åse Ørnhøi", "Strandgata 7, Kvitnes", "2004"],
      ["Tõnu Bråtvær", "Torget 2", "2019"],
    ]);
  });

  test("of old news is history, and does not come back each time it is read", async () => {
    const columns = "Chassis;Recorded on;now: front disc face";
    await importCsv([columns, "M1-012;2020-05-01;drilled"]);
    const older = [columns, "M1-012;2010-05-01;plain"];
    await importCsv(older);
    const before = await world.fingerprint();
    expect(await importCsv(older)).toMatchObject({ carsUnchanged: 1 });
    expect(await world.fingerprint()).toEqual(before);
    const { currentValues, settingSheets } = await carOf("M1012");
    expect(settingSheets).toHaveLength(2);
    expect(currentValues.find(({ characteristic }) => characteristic === "front.disc.face")?.text).toBe(
      "drilled",
    );
  });
});

describe("a part with a day of change", () => {
  const columns =
    "Chassis;Changed on;Changed because;Donor;as built: front anti-roll bar diameter;" +
    "now: front anti-roll bar diameter;now: front disc face;now: front camber left;Recorded on";
  const lines = [columns, "M1-020;9/2004;track days;small saloon;9/16 in;9/16 in;drilled;-1°;2018-01-01"];

  test("becomes an accepted modification; what it left alone and what is set stay readings", async () => {
    await importCsv(lines);
    const { modifications, settingSheets } = await carOf("M1020");
    expect(modifications).toMatchObject([
      {
        fittedText: "9/2004",
        fittedEarliest: day("2004-09-01"),
        fittedLatest: day("2004-09-30"),
        reason: "track days",
        donor: "small saloon",
        submission: { status: "accepted" },
      },
    ]);
    expect(modifications[0]?.changes).toMatchObject([
      { characteristic: "front.disc.face", beforeEntered: null, afterText: "drilled" },
    ]);
    expect(
      settingSheets.flatMap(({ readings }) => readings.map(({ characteristic }) => characteristic)),
    ).toEqual(["front.antiRollBar.diameter", "front.camber"]);
  });

  test("is not added again, and a later one has the earlier as its before", async () => {
    const before = await world.fingerprint();
    await importCsv(lines);
    expect(await world.fingerprint()).toEqual(before);
    await importCsv(["Chassis;Changed on;now: front disc face", "M1-020;2015;grooved"]);
    const { modifications } = await carOf("M1020");
    expect(modifications.map(({ sequence }) => sequence)).toEqual([1, 2]);
    expect(modifications[1]?.changes).toMatchObject([{ beforeText: "drilled", afterText: "grooved" }]);
    const again = await world.fingerprint();
    await importCsv(["Chassis;Changed on;now: front disc face", "M1-020;2015;grooved"]);
    expect(await world.fingerprint()).toEqual(again);
  });
});
