import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { openThrowawayDatabase, type ThrowawayDatabase } from "@trunnion/db/admin";
import { fingerprintOf } from "@trunnion/fixtures";
import { seedDemo } from "@trunnion/prisma/seed";
import { demoSignIns, wantsDemo } from "@trunnion/prisma/state";
import type { SheetModel } from "@trunnion/register";
import {
  blankSheet,
  bookOf,
  type Clock,
  compareCurrentValues,
  type ImportReport,
  importRegister,
  numbersPage,
  openOperator,
  printSheets,
  verifyJournal,
} from "@trunnion/service";
import { drawSheets } from "@trunnion/sheets";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { repository } from "./start/place";

const today = "2026-11-25";
const clock: Clock = { now: new Date(`${today}T09:00:00Z`) };
const demo = [
  { club: "sandvaer", file: "sandvaer-register.csv", event: "kvitnes-track-day", cars: 412, entries: 42 },
  { club: "grusvik", file: "grusvik-fleet.csv", event: "season-check", cars: 14, entries: 14 },
] as const;
type Club = (typeof demo)[number];

let world: ThrowawayDatabase;
let owner: pg.Client;
const log: string[] = [];

beforeAll(async () => {
  world = await openThrowawayDatabase();
  owner = new pg.Client({ connectionString: world.ownerUrl });
  await owner.connect();
}, 120_000);
afterAll(async () => {
  await owner?.end();
  await world?.close();
});

const seed = () => seedDemo({ ...world, today, log: (line) => log.push(line) });

function importAgain({ club, file }: Club, dryRun: boolean): Promise<ImportReport> {
  return openOperator(
    world.database,
    club,
    async (ctx) => {
      const bytes = await readFile(join(repository, "prisma/demo", file));
      return importRegister(ctx, { file, bytes, book: await bookOf(ctx), asOf: ctx.today, dryRun });
    },
    clock,
  );
}

describe("the demo", () => {
  test("is wanted by an empty database, and by one whose filling was cut short", async () => {
    expect(await wantsDemo(world.ownerUrl)).toBe(true);
    await owner.query(
      `INSERT INTO club (id, slug, name, kind) VALUES (gen_random_uuid(), 'sandvaer', 'Sandvær Register', 'ownersClub')`,
    );
    expect(await wantsDemo(world.ownerUrl)).toBe(true);
  });

  test("is not wanted by a database with a club of its own", async () => {
    const own = `INSERT INTO club (id, slug, name, kind) VALUES (gen_random_uuid(), 'own', 'Own', 'fleet')`;
    await owner.query(own);
    expect(await wantsDemo(world.ownerUrl)).toBe(false);
    await owner.query("DELETE FROM club WHERE slug = 'own'");
  });

  test("fills the database, and is not wanted then", async () => {
    await seed();
    expect(await wantsDemo(world.ownerUrl)).toBe(false);
    const { rows } = await owner.query(
      "SELECT c.slug, count(*)::int AS cars FROM car JOIN club c ON c.id = car.club_id GROUP BY 1 ORDER BY 1",
    );
    expect(rows).toEqual([
      { slug: "grusvik", cars: 14 },
      { slug: "sandvaer", cars: 412 },
    ]);
  }, 300_000);

  test("fills nothing twice", async () => {
    const count = async () => {
      const sql = "SELECT (SELECT count(*) FROM car) AS cars, (SELECT count(*) FROM entry) AS entries,";
      const { rows } = await owner.query(`${sql} (SELECT count(*) FROM person) AS people`);
      return rows[0];
    };
    const before = await count();
    await seed();
    expect(await count()).toEqual(before);
  });

  test("tells its sign-ins, each with what they may do", async () => {
    const told = await demoSignIns(world.ownerUrl);
    expect(told?.people).toEqual([
      { email: "registrar@demo.test", as: "registrar" },
      { email: "owner@demo.test", as: "owner" },
      { email: "scrutineer@demo.test", as: "scrutineer" },
      { email: "fleet@demo.test", as: "fleet manager" },
    ]);
  });
});

describe("the demo's register file", () => {
  test("has exactly the mistakes that were planted in it, each told by its place", async () => {
    const { refusedRows, doubtfulRows, unknownHeadings, rowsRead } = await importAgain(demo[0], true);
    expect(rowsRead).toBe(414);
    expect(refusedRows).toEqual([
      {
        line: 302,
        column: 'A "Chassis"',
        found: "S1-0146, which stands on line 62 already",
        expected:
          'one row per car; where two cars claim the number, "2" under "Claim" or their two engine numbers',
      },
      {
        line: 352,
        column: 'AA "now: Front anti-roll bar diameter"',
        found: "22 mn",
        expected: "16 mm or 5/8 in",
      },
    ]);
    expect(doubtfulRows).toEqual([
      {
        line: 144,
        column: 'A "Chassis"',
        found: "S2-0145",
        text: "another car claims S2-0145 too: taken as claimant 2",
      },
      {
        line: 150,
        column: 'A "Chassis"',
        found: "S2-0421",
        text: "0421 lies above the last of Series 2, which is 0398",
      },
    ]);
    expect(unknownHeadings).toEqual(["Club magazine"]);
  });

  test("of the school has none", async () => {
    expect(await importAgain(demo[1], true)).toMatchObject({
      rowsRead: 14,
      refusedRows: [],
      doubtfulRows: [],
      unknownHeadings: [],
    });
  });

  test.each(demo)("$file, read again, changes nothing in any table", async (one) => {
    const before = await fingerprintOf(world.ownerUrl);
    const report = await importAgain(one, false);
    expect(report).toMatchObject({ carsAdded: 0, carsChanged: 0, carsUnchanged: one.cars });
    expect(await fingerprintOf(world.ownerUrl)).toEqual(before);
  });

  test("says nothing of a day that has not come", async () => {
    const { rows } = await owner.query(
      `SELECT max("on")::text AS seen, (SELECT max(fitted_latest)::text FROM modification) AS fitted FROM setting_sheet`,
    );
    expect(rows[0].seen <= today && rows[0].fitted <= today).toBe(true);
  });
});

describe("the demo's numbers", () => {
  const openIn = (club: string) => openOperator(world.database, club, numbersPage, clock);

  test("are odd where that was planted, and nowhere else", async () => {
    const { open, settled, setAside } = await openIn("sandvaer");
    expect(open.map(({ what }) => what)).toEqual([
      "0421 lies above the last of Series 2, which is 0398.",
      "2 cars claim chassis number S2-0145.",
    ]);
    expect([...settled, ...setAside]).toEqual([]);
    const [misread] = open;
    // Two digits exchanged give the number of a car that is there: told, since only a person can say which is which.
    expect(misread?.finding).toMatchObject({ proposals: [{ number: "S2-0241", heldBy: ["S2 0241"] }] });
  });

  test("of the school are all known, and none is odd", async () => {
    const { open, coverage } = await openIn("grusvik");
    expect(open).toEqual([]);
    expect(coverage).toMatchObject([{ known: 14, built: 14, gaps: [] }]);
  });
});

describe("the demo's owner", () => {
  test("keeps a car, which the register says to him and to the registrar alone", async () => {
    const kept = await openOperator(
      world.database,
      "sandvaer",
      (ctx) =>
        ctx.db.keepership.findMany({
          where: { keeper: { membershipId: { not: null } } },
          include: { car: true },
        }),
      clock,
    );
    expect(kept.map(({ car, to }) => [car.chassis, to])).toEqual([["S3-0338", null]]);
  });
});

describe("the demo's records", () => {
  test.each(demo)(
    "of $club are proven: the journal's chain holds and the current values are right",
    async ({ club }) => {
      const [breaks, stale] = await openOperator(
        world.database,
        club,
        async (ctx) => [await verifyJournal(ctx), await compareCurrentValues(ctx, await bookOf(ctx))],
        clock,
      );
      expect(breaks).toEqual([]);
      expect(stale).toEqual([]);
    },
  );

  test("keep every person's data out of the journal", async () => {
    const { rows } = await owner.query<{ text: string }>(
      "SELECT coalesce(before::text, '') || coalesce(after::text, '') || coalesce(reason, '') AS text FROM journal_entry",
    );
    const journal = rows.map(({ text }) => text).join("\n");
    const people = await owner.query<{ said: string }>(
      `SELECT DISTINCT unnest(ARRAY[name, address, email, phone]) AS said FROM keeper
       UNION SELECT driver FROM entry UNION SELECT email FROM person`,
    );
    const said = people.rows.map((row) => row.said).filter((one) => one !== null && one !== "");
    expect(said.length).toBeGreaterThan(500);
    expect(said.filter((one) => journal.includes(one))).toEqual([]);
  });
});

/** Text of each page, read by pdf.js, which shares no code with what drew it. */
async function pageTexts(bytes: Uint8Array): Promise<readonly string[]> {
  const task = getDocument({
    data: bytes.slice(),
    disableFontFace: true,
    isEvalSupported: false,
    verbosity: 0,
  });
  const document = await task.promise;
  const texts: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    const text = items.map((item) => ("str" in item ? item.str : "")).join(" ");
    texts.push(text.replace(/\s+/g, " "));
  }
  await task.destroy();
  return texts;
}

/** The text of each sheet: a page that says it is the first of some begins the next. */
function sheetTexts(pages: readonly string[]): readonly string[] {
  const texts: string[] = [];
  for (const page of pages) {
    if (/page 1 of \d+/.test(page)) texts.push(page);
    else texts[texts.length - 1] += ` ${page}`;
  }
  return texts;
}

const squeezed = (text: string) => text.replace(/\s+/g, "");

/** What a sheet must say, blanks aside: who it is for, and every deviation with what the car has. */
function said({ entry, car, deviations }: SheetModel): readonly string[] {
  return [
    `No. ${entry.runningNumber} · page 1 of`,
    entry.driver,
    car.onRegister ? car.chassis : car.series,
    ...deviations.flatMap(({ label, actual, verdictText }) => [label, actual, verdictText]),
  ];
}

describe("the sheets of the demo", () => {
  test.each(demo)("for $event are built, drawn and read back, each with all that differs", async (one) => {
    const print = () =>
      openOperator(
        world.database,
        one.club,
        async (ctx) => printSheets(ctx, { event: one.event, book: await bookOf(ctx) }),
        clock,
      );
    const sheets = await print();
    expect(sheets).toHaveLength(one.entries);
    const texts = sheetTexts(await pageTexts(await drawSheets(sheets, { paper: "A4" }))).map(squeezed);
    expect(texts).toHaveLength(one.entries);
    const lacking = sheets.flatMap((sheet, index) =>
      said(sheet).filter((part) => !texts[index]?.includes(squeezed(part))),
    );
    expect(lacking).toEqual([]);
    // Left and right of one characteristic that deviate alike stand in one row.
    const counted = sheets.map(({ deviations, settings }) => {
      const isSetting = new Set(settings.map(({ label }) => label));
      const rows = new Map(
        deviations.map(({ label, verdict, specified }) => [`${label} ${verdict} ${specified}`, label]),
      );
      const out = [...rows.values()].filter((label) => isSetting.has(label)).length;
      const parts = rows.size - out;
      const told = [parts === 0 ? "" : `${parts} part${parts === 1 ? "" : "s"}`];
      if (out > 0) told.push(`${out} setting${out === 1 ? "" : "s"} (figures below)`);
      return told.filter((part) => part !== "").join(", ");
    });
    const miscounted = sheets.filter(
      ({ car, deviations }, index) =>
        car.onRegister && deviations.length > 0 && !texts[index]?.includes(squeezed(counted[index] ?? "")),
    );
    expect(miscounted).toEqual([]);
    expect(sheets.some(({ deviations }) => deviations.length > 5) || one.club === "grusvik").toBe(true);
  });

  test.each(demo)("for $event take one or two pages a car, on A4 and on Letter", async ({ club, event }) => {
    const sheets = await openOperator(
      world.database,
      club,
      async (ctx) => {
        const book = await bookOf(ctx);
        const origin = "https://register.example.test";
        return [...(await printSheets(ctx, { event, book, origin })), await blankSheet(ctx, { event, book })];
      },
      clock,
    );
    for (const paper of ["A4", "Letter"] as const) {
      const pages = await pageTexts(await drawSheets(sheets, { paper }));
      expect(pages.filter((text) => /page 3 of \d+/.test(text)).map((text) => text.slice(-40))).toEqual([]);
    }
  });

  test.each(demo)("for $event come again byte for byte from what was kept", async ({ club, event }) => {
    const [sheets, kept] = await openOperator(
      world.database,
      club,
      async (ctx) => {
        const printed = await printSheets(ctx, { event, book: await bookOf(ctx) });
        const hashes = printed.map(({ recordHash }) => recordHash);
        const rows = await ctx.db.printedSheet.findMany({
          where: { entry: { event: { slug: event } }, recordHash: { in: hashes } },
          orderBy: [{ entry: { runningOrder: "asc" } }, { id: "desc" }],
          distinct: ["entryId"],
        });
        return [printed, rows.map(({ model }) => model as unknown as SheetModel)] as const;
      },
      clock,
    );
    const [now, again] = [await drawSheets(sheets, { paper: "A4" }), await drawSheets(kept, { paper: "A4" })];
    expect(Buffer.compare(now, again)).toBe(0);
  });
});
