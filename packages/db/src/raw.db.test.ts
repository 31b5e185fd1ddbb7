import fc from "fast-check";
import pg from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { clientOf, transaction } from "./client";
import { openClub } from "./gate";
import { Prisma } from "./generated/prisma/client";
import type { Tables } from "./scope";
import { openThrowawayDatabase, type ThrowawayDatabase } from "./throwaway-database";

let world: ThrowawayDatabase;
let owner: pg.Client;
let clubs: readonly string[] = [];

beforeAll(async () => {
  world = await openThrowawayDatabase();
  owner = new pg.Client({ connectionString: world.ownerUrl });
  await owner.connect();
  const made = await owner.query<{ id: string }>(
    `INSERT INTO club (id, slug, name, kind)
      SELECT gen_random_uuid(), 'club-' || n, 'Club', 'ownersClub' FROM generate_series(1, 12) n RETURNING id`,
  );
  clubs = made.rows.map(({ id }) => id);
}, 60_000);

afterAll(async () => {
  await owner?.end();
  await world?.close();
});

const limits = { maxWait: 5_000, timeout: 5_000 };
const ours = <T>(work: (tables: Tables) => Promise<T>) => transaction(world.database, work, limits);
/** The object mapper's own way, which is the peer. */
const mapped = <T>(work: (tables: Prisma.TransactionClient) => Promise<T>) =>
  clientOf(world.database).$transaction(work);

const columns = [
  "1::smallint, 2::int, 3::bigint, 9007199254740993::bigint, NULL::bigint",
  "1.5::real, 0.1::float8, '-0'::float8, 'NaN'::float8",
  "12345678901234567890.0100::numeric, 0::numeric",
  "true, false, NULL::bool",
  "'Åse'::text, 'x'::varchar(4), 'y'::char(3), 'inUse'::name",
  "'2026-02-28'::date, '0099-01-01'::date, '1968-06-15 12:30:15.25'::timestamp",
  "'1968-06-15 12:30:15.25+00'::timestamptz, now()",
  `'{"a":[1,null,"x"]}'::jsonb, '[1.50]'::json, 'null'::jsonb`,
  String.raw`'\x00ff10'::bytea, ''::bytea`,
  "'0b9d7f1e-0000-4000-8000-000000000001'::uuid, B'0101'::bit(4), B'1'::varbit",
  "ARRAY[1,2]::int[], ARRAY[3]::bigint[], ARRAY[0.5]::float8[], ARRAY[1.20]::numeric[], ARRAY[]::int[]",
  `ARRAY['a','b "c"',NULL]::text[], ARRAY[true]::bool[], ARRAY['{"a":1}']::jsonb[]`,
  "ARRAY['2026-02-28']::date[], ARRAY['2026-02-28 10:00']::timestamp[], ARRAY['2026-02-28 10:00+00']::timestamptz[]",
  `'owner'::"Role", ARRAY['owner', 'registrar']::"Role"[]`,
] as const;

for (const column of columns) {
  test(`values come back as the object mapper gives them: ${column}`, async () => {
    const named = (await owner.query(`SELECT ${column}`)).fields
      .map((_field, place) => `c${place}`)
      .join(", ");
    const text = `SELECT * FROM (SELECT ${column}) row (${named})`;
    // now() is of the transaction, so both are asked in one.
    const [direct, by] = await ours(async (tables) => [
      await tables.$queryRawUnsafe(text),
      column.includes("now()") ? undefined : await mapped((tx) => tx.$queryRawUnsafe(text)),
    ]);
    expect((direct as readonly object[]).length).toBe(1);
    if (by !== undefined) expect(direct).toStrictEqual(by);
  });
}

test("values go out as the object mapper sends them, whatever the zone of this machine", async () => {
  const value = fc.oneof(
    fc.string({ unit: fc.constantFrom("a", "ö", "'", '"', "\\", ",", "{", "}", " ", "NULL") }),
    fc.date({ noInvalidDate: true, min: new Date("0100-01-01"), max: new Date("9999-01-01") }),
    fc.boolean(),
    fc.integer(),
    fc.bigInt({ min: -(2n ** 63n), max: 2n ** 63n - 1n }),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.constant(null),
  );
  const cast = (one: unknown): Prisma.Sql => {
    if (one instanceof Date) return Prisma.sql`${one}::timestamptz::text`;
    if (typeof one === "boolean") return Prisma.sql`${one}::bool::text`;
    if (typeof one === "bigint") return Prisma.sql`${one}::bigint::text`;
    if (typeof one === "number") return Prisma.sql`${one}::float8::text`;
    return Prisma.sql`${one}::text`;
  };
  await fc.assert(
    fc.asyncProperty(
      fc.array(value, { minLength: 1, maxLength: 5 }),
      fc.array(fc.string().filter((text) => !text.includes("\0"))),
      async (values, words) => {
        const asked = values.map((one, place) => Prisma.sql`${cast(one)} AS ${Prisma.raw(`c${place}`)}`);
        const sql = Prisma.sql`SELECT ${Prisma.join(asked)}, ${words}::text[] AS words`;
        const by = await mapped((tx) => tx.$queryRaw(sql));
        expect(await ours((tables) => tables.$queryRaw(sql))).toStrictEqual(by);
      },
    ),
    { numRuns: 60 },
  );
});

test("rows written are counted, and seen by the tables of the same transaction only", async () => {
  const [club = ""] = clubs;
  await expect(
    openClub(world.database, club, async (db) => {
      const written = await db.$executeRaw`INSERT INTO marque (club_id, id, slug, name)
        VALUES (${club}::uuid, gen_random_uuid(), 'a', 'A'), (${club}::uuid, gen_random_uuid(), 'b', 'B')`;
      expect(written).toBe(2);
      expect(await db.marque.count()).toBe(2);
      expect(await openClub(world.database, club, (other) => other.marque.count())).toBe(0);
      throw new Error("taken back");
    }),
  ).rejects.toThrow("taken back");
  expect(await openClub(world.database, club, (db) => db.marque.count())).toBe(0);
});

test("many transactions at once each stay in their club, by tables and by statements alike", async () => {
  const seen = await Promise.all(
    clubs.flatMap((club) =>
      [1, 2, 3].map((turn) =>
        openClub(world.database, club, async (db) => {
          await db.marque.create({ data: { slug: `turn-${turn}`, name: club } });
          const [set] = await db.$queryRaw<
            { club: string }[]
          >`SELECT current_setting('trunnion.club') AS club`;
          const rows = await db.$queryRaw<{ name: string }[]>`SELECT DISTINCT name FROM marque`;
          return { club, set: set?.club, names: rows.map(({ name }) => name) };
        }),
      ),
    ),
  );
  for (const { club, set, names } of seen) expect({ set, names }).toEqual({ set: club, names: [club] });
});

test("once a transaction is over nothing can be asked in it: its connection may be of another club", async () => {
  const [club = ""] = clubs;
  const kept = await openClub(world.database, club, async (db) => ({ db }));
  await expect(kept.db.$queryRaw`SELECT 1`).rejects.toThrow("the transaction is over");
  await expect(kept.db.$executeRaw`SELECT 1`).rejects.toThrow("the transaction is over");
});

test("a transaction that took too long asks no further", async () => {
  let later: Promise<unknown> = Promise.resolve();
  const slow = transaction(
    world.database,
    async (tables) => {
      await new Promise((resolve) => setTimeout(resolve, 400));
      later = tables.$queryRaw`SELECT 1`;
      await later;
    },
    { maxWait: 5_000, timeout: 100 },
  );
  await expect(slow).rejects.toThrow();
  await expect(later).rejects.toThrow("the transaction is over");
});

test("an error is the database's own, with its code, and the connection serves on", async () => {
  const [club = ""] = clubs;
  const wrong = openClub(world.database, club, (db) => db.$queryRaw`SELECT 1 / 0`);
  await expect(wrong).rejects.toMatchObject({ code: "22012", message: "division by zero" });
  expect(await openClub(world.database, club, (db) => db.$queryRaw`SELECT 1 AS one`)).toEqual([{ one: 1 }]);
});
