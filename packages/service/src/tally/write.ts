import { Prisma } from "@trunnion/db";
import type { CharacteristicBook } from "@trunnion/register";
import type { Context } from "../context";
import {
  blockedSql,
  blockSql,
  columnList,
  everySql,
  givenSql,
  idSql,
  noneSql,
  oneSql,
  sortSql,
} from "./policy";

const sql = Prisma.sql;

/**
 * Which blocks the cars are to be in, `held`, and which they are in, `left_`: in the former they are put, out of the latter taken. A
 * block that is as it should be is not written. Both are put together by one grouping: the planner cannot know how many they
 * are, and would compare each with each.
 */
const blockParts = sql`
    masks AS MATERIALIZED (SELECT ${blockSql(sql`place`)} AS block, bit_or(${oneSql(sql`place`)}) AS cars FROM placed GROUP BY 1),
    held AS (SELECT n.sort, ${blockSql(sql`p.place`)} AS block, bit_or(${oneSql(sql`p.place`)}) AS cars
      FROM counts n JOIN placed p USING (car_id) WHERE n.about IN ${blockedSql} GROUP BY 1, 2),
    left_ AS (SELECT b.sort, b.block FROM (SELECT DISTINCT t.sort, ${blockSql(sql`w.place`)} AS block
      FROM was w, unnest(w.ids) AS i(id) JOIN tally t ON t.id = i.id WHERE t.about IN ${blockedSql}) AS l
      JOIN tally_block b ON b.sort = l.sort AND b.block = l.block),
    touched AS (SELECT sort, block, bit_or(cars) AS cars FROM (SELECT sort, block, cars FROM held
      UNION ALL SELECT sort, block, ${noneSql} FROM left_) AS one GROUP BY 1, 2),
    blocked AS (INSERT INTO tally_block AS b (sort, block, cars) SELECT sort, block, cars FROM touched ORDER BY 1, 2
      ON CONFLICT (club_id, sort, block) DO UPDATE
        SET cars = (b.cars & ~(SELECT m.cars FROM masks m WHERE m.block = excluded.block)) | excluded.cars
        WHERE b.cars <> ((b.cars & ~(SELECT m.cars FROM masks m WHERE m.block = excluded.block)) | excluded.cars))`;

/**
 * Takes the cars out of the rows they were counted in, in `was` each as often as it was, and counts them in those they belong
 * to now. Gives the ids of rows that are left counting nothing.
 */
function refreshSql(ids: readonly string[], book: CharacteristicBook): Prisma.Sql {
  return sql`WITH ${givenSql(ids)},
    counts AS MATERIALIZED (SELECT p.*, ${idSql} AS id, ${sortSql} AS sort FROM (${everySql(sql`given`, book)}) AS p),
    placed AS MATERIALIZED (SELECT s.car_id, s.place FROM car_summary s WHERE s.car_id = ANY(${[...ids]}::uuid[])),
    was AS MATERIALIZED (SELECT t.car_id, t.ids, p.place FROM car_tally t JOIN placed p USING (car_id)),
    ${blockParts},
    gone AS (DELETE FROM car_tally t WHERE t.car_id = ANY(${[...ids]}::uuid[]) AND t.car_id NOT IN (SELECT id FROM given)),
    noted AS (INSERT INTO car_tally (car_id, ids) SELECT car_id, array_agg(id) FROM counts GROUP BY car_id
      ON CONFLICT (club_id, car_id) DO UPDATE SET ids = excluded.ids),
    moved AS MATERIALIZED (SELECT id, sum(by)::int AS by FROM (SELECT id, 1 AS by FROM counts
      UNION ALL SELECT unnest(ids), -1 FROM was) AS step GROUP BY id HAVING sum(by) <> 0),
    changed AS (UPDATE tally t SET count = t.count + m.by FROM moved m WHERE t.id = m.id RETURNING t.id, t.count),
    added AS (INSERT INTO tally (id, sort, ${columnList}, count)
      SELECT DISTINCT ON (id) id, sort, ${columnList}, by FROM counts JOIN moved USING (id) WHERE id NOT IN (SELECT id FROM changed) ORDER BY id)
    SELECT id::text AS id FROM changed WHERE count = 0`;
}

/**
 * Counts some cars anew, in the caller's transaction: gone or merged ones nowhere. Their summaries are up to date, and nobody
 * else of the club is at it, which `refreshSearchIndex` sees to.
 */
export async function refreshTallies(
  { db }: Context,
  carIds: readonly string[],
  book: CharacteristicBook,
): Promise<void> {
  const empty = await db.$queryRaw<{ id: string }[]>(refreshSql(carIds, book));
  if (empty.length === 0) return;
  const ids = empty.map(({ id }) => id);
  const gone = await db.$queryRaw<{ sort: string }[]>(
    sql`DELETE FROM tally WHERE id = ANY(${ids}::bigint[]) RETURNING sort::text AS sort`,
  );
  const sorts = gone.map(({ sort }) => sort);
  await db.$executeRaw(sql`DELETE FROM tally_block b WHERE b.sort = ANY(${sorts}::bigint[])
    AND NOT EXISTS (SELECT FROM tally t WHERE t.club_id = b.club_id AND t.sort = b.sort)`);
}

/** Forgets what was counted of the club and notes every car down to be counted anew: the way back from whatever went wrong. */
export async function forgetTallies({ db }: Context): Promise<void> {
  await db.$executeRaw(sql`DELETE FROM tally`);
  await db.$executeRaw(sql`DELETE FROM tally_block`);
  await db.$executeRaw(sql`DELETE FROM car_tally`);
  await db.$executeRaw(sql`INSERT INTO stale_car (id, car_id) SELECT gen_random_uuid(), id FROM car`);
}
