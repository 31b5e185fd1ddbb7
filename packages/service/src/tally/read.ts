import { Prisma } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import type { Context } from "../context";
import { standingRecordSql } from "../standing-record";
import { blockedSql, blockSql, columnList, everySql, firstPlaceSql, noneSql, oneSql } from "./policy";

const sql = Prisma.sql;

/** A row of tallies that is not what the records amount to. */
export interface WrongTally {
  readonly about: string;
  readonly characteristic: string;
  /** What is kept, and what counting from scratch gives. */
  readonly kept: number;
  readonly counted: number;
}

/** Rows counted, and cars looked at, in one go: what a transaction has time for on a slow machine. */
const ROWS = 400_000;
const PLACES = 2_048;

/** Everything that may be counted by, with about how many rows there are of it. */
const keysSql = sql`SELECT characteristic AS key, count(*)::int AS rows FROM (
    SELECT characteristic FROM current_value UNION ALL SELECT characteristic FROM reading
    UNION ALL SELECT characteristic FROM modification_change UNION ALL SELECT kind FROM dated_item
    UNION ALL SELECT characteristic FROM tally UNION ALL SELECT '' FROM car) AS one GROUP BY 1 ORDER BY 1`;

function portionsOf(keys: readonly { readonly key: string; readonly rows: number }[]): readonly string[][] {
  const portions: string[][] = [];
  let left = 0;
  for (const { key, rows } of keys) {
    if (rows > left) {
      portions.push([]);
      left = ROWS;
    }
    portions.at(-1)?.push(key);
    left -= rows;
  }
  return portions;
}

/** Rows of some characteristics that do not count what is there. */
function wrongCounts(keys: readonly string[], book: CharacteristicBook): Prisma.Sql {
  const cars = sql`(SELECT * FROM car c WHERE ${standingRecordSql})`;
  const ofKeys = sql`characteristic = ANY(${[...keys]}::text[])`;
  return sql`SELECT about::text AS about, characteristic, sum(kept)::int AS kept, sum(counted)::int AS counted FROM (
      SELECT ${columnList}, count AS kept, 0 AS counted FROM tally WHERE ${ofKeys}
      UNION ALL SELECT ${columnList}, 0, 1 FROM (${everySql(cars, book)}) AS p WHERE ${ofKeys}) AS both_ways
    GROUP BY ${columnList} HAVING sum(kept) <> sum(counted) ORDER BY 1, 2`;
}

/** Sorts whose blocks are not, among the cars of some places of one block, of the very cars that are counted in them. */
function wrongBlocks(from: number): Prisma.Sql {
  const to = from + PLACES - 1;
  return sql`WITH places AS MATERIALIZED (SELECT bit_or(${oneSql(sql`p.place`)}) AS mask FROM generate_series(${from}::int, ${to}::int) AS p(place)),
    should AS (SELECT t.sort, bit_or(${oneSql(sql`k.place`)}) AS cars
      FROM car_summary k JOIN car_tally j USING (club_id, car_id), unnest(j.ids) AS i(id) JOIN tally t ON t.id = i.id
      WHERE k.place BETWEEN ${from}::int AND ${to}::int AND t.about IN ${blockedSql} GROUP BY 1),
    held AS MATERIALIZED (SELECT b.sort, b.cars & m.mask AS cars FROM tally_block b, places m WHERE b.block = ${blockSql(sql`${from}::int`)}),
    both_ways AS (SELECT sort, bit_or(held) AS held, bit_or(should) AS should FROM (
      SELECT sort, cars AS held, ${noneSql} AS should FROM held UNION ALL SELECT sort, ${noneSql}, cars FROM should) AS one GROUP BY 1)
  SELECT coalesce(t.about, 'nothing') AS about, coalesce(t.characteristic, '') AS characteristic,
    bit_count(w.held)::int AS kept, bit_count(w.should)::int AS counted
  FROM both_ways w LEFT JOIN LATERAL (SELECT one.about, one.characteristic FROM tally one WHERE one.sort = w.sort LIMIT 1) AS t ON TRUE
  WHERE w.held <> w.should ORDER BY 1, 2`;
}

/** Behind the last place that a car has or a block speaks of. */
const endSql = sql`SELECT greatest((SELECT max(place) + 1 FROM car_summary), (SELECT ${firstPlaceSql(sql`(max(block) + 1)`)} FROM tally_block), 0)::int AS end`;

/**
 * Proves that the tallies are what counting every car from scratch gives, and their blocks of the very cars; empty when they
 * are. Of cars that are noted down to be counted anew they are not yet: whoever asks brings the search index up to date before.
 *
 * @param open opens a transaction: one each for some characteristics and for some cars, so that a club of any size is proved
 */
export async function compareTallies(
  open: <T>(work: (ctx: Context) => Promise<T>) => Promise<T>,
  book: CharacteristicBook,
): Promise<readonly WrongTally[]> {
  const ask = (question: Prisma.Sql) => open(({ db }) => db.$queryRaw<WrongTally[]>(question));
  const wrong: WrongTally[] = [];
  const keys = await open(({ db }) => db.$queryRaw<{ key: string; rows: number }[]>(keysSql));
  for (const portion of portionsOf(keys)) wrong.push(...(await ask(wrongCounts(portion, book))));
  const [{ end } = { end: 0 }] = await open(({ db }) => db.$queryRaw<{ end: number }[]>(endSql));
  for (let from = 0; from < end; from += PLACES) wrong.push(...(await ask(wrongBlocks(from))));
  return wrong;
}
