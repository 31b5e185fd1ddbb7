import { randomUUID } from "node:crypto";
import fc from "fast-check";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { insertRows, replaceRows, updateRows } from "./bulk";
import { openClub } from "./gate";
import type { ClubTables } from "./scope";
import { openThrowawayDatabase, type ThrowawayDatabase } from "./throwaway-database";

let world: ThrowawayDatabase;
let club = "";
let other = "";

const inside = <T>(work: (db: ClubTables) => Promise<T>, id = club) => openClub(world.database, id, work);

async function addClub(owner: pg.Client, slug: string): Promise<string> {
  const { rows } = await owner.query<{ id: string }>(
    "INSERT INTO club (id, slug, name, kind) VALUES (gen_random_uuid(), $1, $1, 'ownersClub') RETURNING id",
    [slug],
  );
  return rows[0]?.id ?? "";
}

beforeAll(async () => {
  world = await openThrowawayDatabase();
  const owner = new pg.Client({ connectionString: world.ownerUrl });
  await owner.connect();
  club = await addClub(owner, "ours");
  other = await addClub(owner, "theirs");
  await owner.end();
}, 60_000);

afterAll(() => world?.close());

const car = (chassis: string) => ({ id: randomUUID(), chassis, chassisKey: chassis.toUpperCase(), claim: 1 });

/** Texts that mean something to PostgreSQL's arrays, to JSON or to SQL, and some that mean nothing. */
const awkward = fc.oneof(
  fc.constantFrom("", "NULL", "null", "{}", '{"a",b}', "\\", '\\"', "a\nb\t", "'; --", "é̈ œ 漢 🚗", "1e400"),
  fc.string({ unit: "binary" }).filter((text) => !text.includes("\u0000")),
);

describe("many rows inserted at once", () => {
  test("come back as they were given, whatever stands in their texts, lists, dates and numbers", async () => {
    const text = fc.array(fc.record({ name: awkward, suffixes: fc.array(awkward) }), { minLength: 1 });
    await fc.assert(
      fc.asyncProperty(text, async (texts) => {
        const read = await inside(async (db) => {
          const { id: marqueId } = await db.marque.create({ data: { slug: randomUUID(), name: "M" } });
          const rows = texts.map(({ name, suffixes }, index) => ({
            id: randomUUID(),
            marqueId,
            slug: randomUUID(),
            name,
            ordinal: index,
            numberPrefix: name,
            numberDigits: 4,
            firstSerial: 1 - index,
            lastSerial: 2 ** 31 - 1,
            numberSuffixes: suffixes,
            builtFrom: new Date("1968-02-29"),
            builtTo: new Date("1977-01-01"),
          }));
          await insertRows(db, "series", rows);
          const found = await db.series.findMany({
            where: { marqueId },
            omit: { clubId: true, builtCount: true, recordedAt: true },
            orderBy: { ordinal: "asc" },
          });
          return { rows, found };
        });
        expect(read.found).toEqual(read.rows);
      }),
      { numRuns: 30 },
    );
  });

  test("keep JSON as it is, a missing field as nothing, and take the database's defaults for what no row names", async () => {
    const after = { 'a"b': ["\\", null, 1.5, true, { "{": "}" }], text: "NULL" };
    await inside((db) =>
      insertRows(db, "journalEntry", [
        { action: "try.one", noun: "try", nounId: randomUUID(), after },
        { action: "try.two", noun: "try", nounId: randomUUID() },
      ]),
    );
    const found = await inside((db) => db.journalEntry.findMany({ orderBy: { sequence: "asc" } }));
    expect(found.map(({ action, after, clubId }) => ({ action, after, clubId }))).toEqual([
      { action: "try.one", after, clubId: club },
      { action: "try.two", after: null, clubId: club },
    ]);
    expect(found[1]?.previousHash).toBe(found[0]?.hash);
  });

  test("are refused where a field has no column", async () => {
    const attempt = inside((db) => insertRows(db, "marque", [{ slug: "x", name: "X", colour: "blue" }]));
    await expect(attempt).rejects.toThrow("not a column: colour");
  });
});

describe("many rows changed at once", () => {
  test("get the columns each names, and keep the others", async () => {
    const [one, two] = [car("U-1"), car("U-2")];
    const found = await inside(async (db) => {
      await insertRows(db, "car", [one, two]);
      await updateRows(db, "car", [
        { id: one.id, remarks: 'said "so\\"', version: 2 },
        { id: two.id, remarks: null, serial: 7 },
      ]);
      return db.car.findMany({
        where: { id: { in: [one.id, two.id] } },
        select: { chassis: true, remarks: true, version: true, serial: true },
        orderBy: { chassis: "asc" },
      });
    });
    expect(found).toEqual([
      { chassis: "U-1", remarks: 'said "so\\"', version: 2, serial: null },
      { chassis: "U-2", remarks: null, version: 1, serial: 7 },
    ]);
  });
});

describe("the rows of some owners replaced", () => {
  const value = (carId: string, characteristic: string, number: number | null) => ({
    carId,
    characteristic,
    side: "whole" as const,
    valueKind: "quantity" as const,
    entered: `${number}`,
    number,
    origin: "reading" as const,
    originId: carId,
    since: new Date("1971-03-01"),
    verdict: "notRecorded" as const,
  });
  const key = ["carId", "characteristic", "side"];
  const put = (db: ClubTables, owners: readonly string[], rows: readonly object[]) =>
    replaceRows(db, "currentValue", { owner: "carId", owners, key, rows });
  const all = (db: ClubTables) =>
    db.currentValue.findMany({
      select: { carId: true, characteristic: true, number: true },
      orderBy: [{ carId: "asc" }, { characteristic: "asc" }],
    });

  test("are those given and no others; what was right is not written, and nobody else's row is touched", async () => {
    const [mine, spared] = [car("R-1"), car("R-2")];
    await inside(async (db) => {
      await insertRows(db, "car", [mine, spared]);
      await put(db, [spared.id], [value(spared.id, "a", 1)]);
      const first = [value(mine.id, "a", 1), value(mine.id, "b", 2), value(mine.id, "c", null)];
      expect(await put(db, [mine.id], first)).toBe(3);
      expect(await put(db, [mine.id], first)).toBe(0);
      const second = [value(mine.id, "a", 1), value(mine.id, "b", 3), value(mine.id, "d", 4)];
      expect(await put(db, [mine.id], second)).toBe(3);
      const found = await all(db);
      expect(found.filter(({ carId }) => carId === mine.id)).toEqual(
        ["a", "b", "d"].map((characteristic, index) => ({
          carId: mine.id,
          characteristic,
          number: [1, 3, 4][index],
        })),
      );
      expect(found.filter(({ carId }) => carId === spared.id)).toHaveLength(1);
      expect(await put(db, [mine.id], [])).toBe(3);
      expect((await all(db)).map(({ carId }) => carId)).toEqual([spared.id]);
    });
  });

  test("of another club are neither seen nor touched", async () => {
    const [ours, theirs] = [car("R-3"), { ...car("R-3") }];
    await inside(async (db) => {
      await insertRows(db, "car", [theirs]);
      await put(db, [theirs.id], [value(theirs.id, "a", 1)]);
    }, other);
    await inside(async (db) => {
      await insertRows(db, "car", [ours]);
      expect(await put(db, [ours.id, theirs.id], [value(ours.id, "a", 2)])).toBe(1);
    });
    expect(await inside(all, other)).toEqual([{ carId: theirs.id, characteristic: "a", number: 1 }]);
  });
});
