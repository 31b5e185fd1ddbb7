import { openWorld, type World, type WorldCar, type WorldPerson } from "@trunnion/fixtures";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Context } from "../context";
import { openMember, openOperator } from "../gate";
import { carJournal, checkJournal, journalEntry, journalPage } from "./index";
import { type JournalQuery, pageStatement } from "./read";
import { type JournalLine, writeJournal } from "./write";

let world: World;
let registrar: WorldPerson;
let scrutineer: WorldPerson;
let car: WorldCar;
let other: WorldCar;

const NOUN = "01900000-0000-7000-8000-000000000001";
/** Written by the machine, one transaction each, so that every one has an instant of its own. */
const MANY = 130;

const as = <T>(person: WorldPerson, work: (ctx: Context) => Promise<T>) =>
  openMember(world.database, person, "ours", work);
const page = (query: JournalQuery = {}) => as(scrutineer, (ctx) => journalPage(ctx, query));
const line = (carId: string, parts: Partial<JournalLine> = {}): JournalLine => ({
  action: "car.change",
  noun: "car",
  nounId: carId,
  carId,
  ...parts,
});

beforeAll(async () => {
  world = await openWorld();
  registrar = await world.person({ name: "Ragnhild Tveitås", roles: ["registrar"] });
  scrutineer = await world.person({ name: "Łucja Skårnes", roles: ["scrutineer"] });
  [car, other] = [await world.car({ chassis: "M1-001" }), await world.car({ chassis: "M1-002" })];
  for (let count = 1; count <= MANY; count++) {
    const changed = line(count % 10 === 0 ? other.id : car.id, {
      before: { serial: count },
      after: { serial: count + 1 },
    });
    await openOperator(world.database, "ours", (ctx) => writeJournal(ctx, [changed]));
  }
  await as(registrar, (ctx) =>
    writeJournal(ctx, [
      line(car.id, {
        action: "car.correct",
        reason: "the build book, p. 12",
        before: { built: "", status: "laidUp", "front.camber left": "-1°", seriesId: NOUN },
        after: {
          built: "3/72",
          status: "inUse",
          "front.camber left": "-0°30'",
          seriesId: registrar.personId,
          on: "1998-03-12",
        },
      }),
    ]),
  );
  await openOperator(world.database, "theirs", (ctx) =>
    writeJournal(ctx, [{ ...line(NOUN), reason: "not yours to read" }]),
  );
}, 180_000);
afterAll(() => world?.close());

describe("the journal of a club", () => {
  test("says who did what, to which car, why, and what it changed in words", async () => {
    const { items } = await page();
    expect(items[0]).toMatchObject({
      sequence: MANY + 1,
      who: { name: "Ragnhild Tveitås", left: false },
      what: "Facts of the car corrected",
      car: { reference: "M1-001", chassis: "M1-001" },
      reason: "the build book, p. 12",
      changes: [
        { label: "Built", before: "", after: "3/72" },
        { label: "Status", before: "Laid up", after: "In use" },
        { label: "Front camber, left", before: "-1°", after: "-0°30'" },
        { label: "Day", before: "", after: "12 Mar 1998" },
      ],
    });
    expect(items[0]?.at).toMatch(/^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/);
  });

  test("goes on page by page, without losing an entry or telling one twice", async () => {
    const seen: number[] = [];
    let before: number | undefined;
    for (let pages = 0; pages < 10; pages++) {
      const { items, next } = await page(before === undefined ? {} : { before });
      seen.push(...items.map(({ sequence }) => sequence));
      if (next === undefined) break;
      before = next;
    }
    expect(seen).toEqual(Array.from({ length: MANY + 1 }, (_, index) => MANY + 1 - index));
  });

  test("is narrowed by car, person, kind of action and days", async () => {
    const today = new Date().toISOString().slice(0, 10);
    const places = async (query: JournalQuery) => (await page(query)).items.map(({ sequence }) => sequence);
    expect(await places({ car: "M1-002" })).toEqual([130, 120, 110, 100, 90, 80, 70, 60, 50, 40, 30, 20, 10]);
    expect(await places({ person: registrar.personId })).toEqual([MANY + 1]);
    expect(await places({ person: "none", car: "M1-002", before: 30 })).toEqual([20, 10]);
    expect(await places({ action: "car.correct" })).toEqual([MANY + 1]);
    expect(await places({ action: "car.correct", to: "2001-01-01" })).toEqual([]);
    expect(await places({ action: "car.correct", from: today })).toEqual([MANY + 1]);
  });

  test("offers to narrow it to those who did something, and to what was done", async () => {
    const { persons, actions } = await page();
    expect(persons.map(({ name }) => name)).toEqual(["Ragnhild Tveitås", "command line"]);
    expect(actions).toEqual([
      { action: "car.change", what: "Car changed by a file" },
      { action: "car.correct", what: "Facts of the car corrected" },
    ]);
  });

  test("tells of a car that is not there instead of showing everything", async () => {
    expect(await page({ car: "M1-999" })).toMatchObject({ items: [], carNotFound: "M1-999" });
    await expect(as(scrutineer, (ctx) => carJournal(ctx, { car: "M1-999" }))).rejects.toMatchObject({
      code: "CAR_NOT_FOUND",
    });
  });

  test("shows nothing of another club's", async () => {
    const { items } = await as(scrutineer, (ctx) => journalPage(ctx, { action: "car.change" }));
    expect(items.filter(({ reason }) => reason === "not yours to read")).toEqual([]);
    await expect(as(scrutineer, (ctx) => journalEntry(ctx, MANY + 2))).rejects.toMatchObject({
      code: "JOURNAL_ENTRY_NOT_FOUND",
    });
  });

  test("still names somebody who has left", async () => {
    await world.inClub((db) =>
      db.membership.updateMany({ where: { personId: registrar.personId }, data: { leftAt: new Date() } }),
    );
    const { items } = await page({ action: "car.correct" });
    expect(items[0]?.who).toMatchObject({ name: "Ragnhild Tveitås", left: true });
    await world.inClub((db) => db.membership.updateMany({ data: { leftAt: null } }));
  });
});

test("one entry is told as it is kept, with its place in the chain", async () => {
  const [entry, before] = await as(scrutineer, async (ctx) => [
    await journalEntry(ctx, MANY + 1),
    await journalEntry(ctx, MANY),
  ]);
  expect(entry).toMatchObject({
    action: "car.correct",
    noun: "car",
    nounId: car.id,
    previousHash: before?.hash,
  });
  expect(entry?.after).toMatchObject({ built: "3/72", status: "inUse" });
});

describe("the chain", () => {
  test("is worked out for who answers for the register, and tells up to where", async () => {
    const report = await as(registrar, checkJournal);
    expect(report).toMatchObject({ breaks: [], from: 1, last: { sequence: MANY + 1 } });
    expect(report.last?.hash).toMatch(/^[0-9a-f]{64}$/);
  });

  test("is not for everybody to have worked out", async () => {
    await expect(as(scrutineer, checkJournal)).rejects.toMatchObject({ code: "ROLE_NEEDED" });
  });
});

describe("however long it is", () => {
  const queries: readonly [string, JournalQuery, boolean][] = [
    ["whole", {}, false],
    ["further back", { before: 60 }, false],
    ["by person", { person: NOUN }, false],
    ["by action", { action: "car.correct", before: 60 }, false],
    ["by days", { from: "2026-01-01", to: "2026-01-31" }, false],
    ["by car", {}, true],
  ];

  test.each(queries)(
    "a page of it (%s) is read from an index, without sorting or going through it",
    async (_, query, ofCar) => {
      const plan = await as(scrutineer, async (ctx) => {
        // A table this small would be read whole: what is looked at is whether an index can answer it at all.
        await ctx.db.$executeRawUnsafe("SET LOCAL enable_seqscan = off");
        await ctx.db.$executeRawUnsafe("SET LOCAL enable_bitmapscan = off");
        const { sql, values } = pageStatement(ctx, query, ofCar ? car.id : undefined);
        const rows = await ctx.db.$queryRawUnsafe<{ "QUERY PLAN": string }[]>(
          `EXPLAIN ${explainable(sql)}`,
          ...values,
        );
        return rows.map((row) => row["QUERY PLAN"]).join("\n");
      });
      expect(plan).toMatch(/Index Scan Backward using journal_entry/);
      expect(plan).not.toMatch(/Sort/);
      expect(plan).not.toMatch(/Seq Scan/);
    },
  );
});

/** Parameters as the statement's own driver would number them. */
function explainable(sql: string): string {
  let count = 0;
  return sql.replaceAll("?", () => `$${++count}`);
}
