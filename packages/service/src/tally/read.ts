import { Prisma } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import type { Context } from "../context";
import { standingRecordSql } from "../standing-record";
import { columnList, everySql } from "./policy";

const sql = Prisma.sql;

/** A row of tallies that is not what the records amount to. */
export interface WrongTally {
  readonly about: string;
  readonly characteristic: string;
  /** What is kept, and what counting from scratch gives. */
  readonly kept: number;
  readonly counted: number;
}

/**
 * Proves that the tallies are what counting every car from scratch gives; empty when they are. Of cars that are noted down to
 * be counted anew they are not yet: whoever asks brings the search index up to date before.
 */
export async function compareTallies(
  { db }: Context,
  book: CharacteristicBook,
): Promise<readonly WrongTally[]> {
  const cars = sql`(SELECT * FROM car c WHERE ${standingRecordSql})`;
  return db.$queryRaw<WrongTally[]>(sql`
    SELECT about::text AS about, characteristic, sum(kept)::int AS kept, sum(counted)::int AS counted FROM (
      SELECT ${columnList}, count AS kept, 0 AS counted FROM tally
      UNION ALL SELECT ${columnList}, 0, 1 FROM (${everySql(cars, book)}) AS p) AS both_ways
    GROUP BY ${columnList} HAVING sum(kept) <> sum(counted) ORDER BY 1, 2`);
}
