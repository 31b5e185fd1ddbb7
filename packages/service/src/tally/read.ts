import { Prisma } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import type { Context } from "../context";
import { standingRecordSql } from "../standing-record";
import { blockedSql, blockSql, columnList, everySql, noneSql, oneSql } from "./policy";

const sql = Prisma.sql;

/** A row of tallies that is not what the records amount to. */
export interface WrongTally {
  readonly about: string;
  readonly characteristic: string;
  /** What is kept, and what counting from scratch gives. */
  readonly kept: number;
  readonly counted: number;
}

/** Rows whose blocks are not of the very cars that are counted in them. */
const wrongBlocks = sql`
  WITH should AS (SELECT i.id AS tally_id, ${blockSql(sql`k.place`)} AS block, bit_or(${oneSql(sql`k.place`)}) AS cars
    FROM car_tally j JOIN car_summary k USING (club_id, car_id), unnest(j.ids) AS i(id) JOIN tally t ON t.id = i.id AND t.about IN ${blockedSql} GROUP BY 1, 2)
  SELECT coalesce(t.about, 'nothing') AS about, coalesce(t.characteristic, '') AS characteristic,
    sum(bit_count(coalesce(b.cars, ${noneSql})))::int AS kept, sum(bit_count(coalesce(s.cars, ${noneSql})))::int AS counted
  FROM tally_block b FULL JOIN should s ON s.tally_id = b.tally_id AND s.block = b.block
    LEFT JOIN tally t ON t.id = coalesce(s.tally_id, b.tally_id)
  WHERE coalesce(b.cars, ${noneSql}) <> coalesce(s.cars, ${noneSql}) GROUP BY 1, 2, coalesce(s.tally_id, b.tally_id) ORDER BY 1, 2`;

/**
 * Proves that the tallies are what counting every car from scratch gives; empty when they are. Of cars that are noted down to
 * be counted anew they are not yet: whoever asks brings the search index up to date before.
 */
export async function compareTallies(
  { db }: Context,
  book: CharacteristicBook,
): Promise<readonly WrongTally[]> {
  const cars = sql`(SELECT * FROM car c WHERE ${standingRecordSql})`;
  const wrong = await db.$queryRaw<WrongTally[]>(sql`
    SELECT about::text AS about, characteristic, sum(kept)::int AS kept, sum(counted)::int AS counted FROM (
      SELECT ${columnList}, count AS kept, 0 AS counted FROM tally
      UNION ALL SELECT ${columnList}, 0, 1 FROM (${everySql(cars, book)}) AS p) AS both_ways
    GROUP BY ${columnList} HAVING sum(kept) <> sum(counted) ORDER BY 1, 2`);
  return [...wrong, ...(await db.$queryRaw<WrongTally[]>(wrongBlocks))];
}
