import { Prisma } from "@trunnion/db";

const sql = Prisma.sql;

const differs = sql`v.verdict IN ('outsideLimits', 'differentPart', 'added', 'missing')`;

/**
 * For the rest of the transaction reads out of order count as dear again. What follows goes over every value of the club,
 * which is faster in the order in which they lie than along any index.
 */
export const readInOrderSql = sql`WITH planner AS (SELECT set_config('random_page_cost', '4', true)) SELECT FROM planner`;

/**
 * Per characteristic: of how many of the cars meant it is known and could be compared with factory, and how many of those
 * differ there, on either side. One pass over the values.
 */
export function prevalenceSql(where: Prisma.Sql): Prisma.Sql {
  return sql`SELECT characteristic, count(*)::int AS known, count(*) FILTER (WHERE compared)::int AS compared,
      count(*) FILTER (WHERE differs)::int AS differs
    FROM (SELECT v.characteristic, v.car_id, bool_or(v.verdict <> 'notRecorded') AS compared, bool_or(${differs}) AS differs
      FROM current_value v JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id WHERE ${where} GROUP BY 1, 2) AS of_car
    GROUP BY 1`;
}

/** What differing cars have there most often. */
export function commonestDifferentSql(where: Prisma.Sql): Prisma.Sql {
  return sql`SELECT DISTINCT ON (characteristic) characteristic, kind, text, entered, cars FROM (
      SELECT v.characteristic, v.value_kind::text AS kind, v.text, min(v.entered) AS entered, count(DISTINCT v.car_id)::int AS cars
      FROM current_value v JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id
      WHERE ${differs} AND ${where} GROUP BY v.characteristic, v.value_kind, v.text, v.number) AS value
    ORDER BY characteristic, cars DESC, entered`;
}

/** The year a change was made in, where its date leaves no doubt of it. */
const year = sql`CASE WHEN extract(year FROM m.fitted_earliest) = extract(year FROM m.fitted_latest)
  THEN extract(year FROM m.fitted_latest)::int END`;

/** Recorded changes by characteristic and year; those whose year is in doubt under no year. */
export function changedSql(where: Prisma.Sql): Prisma.Sql {
  return sql`SELECT h.characteristic, ${year} AS year, count(DISTINCT m.car_id)::int AS cars
    FROM modification m JOIN car c ON c.club_id = m.club_id AND c.id = m.car_id
    JOIN modification_change h ON h.club_id = m.club_id AND h.modification_id = m.id
    WHERE m.superseded_at IS NULL AND ${where} GROUP BY 1, 2`;
}
