import { Prisma } from "@trunnion/db";
import { type Counted, countedSql } from "../tally";

const sql = Prisma.sql;

/**
 * For the rest of the transaction reads out of order count as dear again. What follows goes over every value of the club,
 * which is faster in the order in which they lie than along any index.
 */
export const readInOrderSql = sql`WITH planner AS (SELECT set_config('random_page_cost', '4', true)) SELECT FROM planner`;

/** Per characteristic: of how many of the cars meant it is known and could be compared with factory, and how many of those differ there. */
export function prevalenceSql(counted: Counted): Prisma.Sql {
  return sql`SELECT characteristic, sum(count)::int AS known,
      coalesce(sum(count) FILTER (WHERE standing <> 'notCompared'), 0)::int AS compared,
      coalesce(sum(count) FILTER (WHERE standing = 'differs'), 0)::int AS differs
    FROM ${countedSql("known", counted)} AS p GROUP BY 1 HAVING sum(count) > 0`;
}

/** What differing cars have there most often. */
export function commonestDifferentSql(counted: Counted): Prisma.Sql {
  return sql`SELECT DISTINCT ON (characteristic) characteristic, kind, text, entered, cars FROM (
      SELECT characteristic, value_kind::text AS kind, text, min(entered) AS entered, sum(count)::int AS cars
      FROM ${countedSql("differing", counted)} AS p GROUP BY characteristic, value_kind, text, number
      HAVING sum(count) > 0) AS value
    ORDER BY characteristic, cars DESC, entered`;
}

/** Cars with recorded changes by characteristic and year; those whose year is in doubt under no year. */
export const changedSql = (counted: Counted): Prisma.Sql =>
  sql`SELECT characteristic, year, sum(count)::int AS cars FROM ${countedSql("changed", counted)} AS p
    GROUP BY 1, 2 HAVING sum(count) > 0`;
