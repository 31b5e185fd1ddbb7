import { Prisma } from "@trunnion/db";
import { quartilesSql } from "../quantile-sql";
import { standingRecordSql } from "../standing-record";
import { builtMonth, keptSql } from "../tally";

const sql = Prisma.sql;

/** Thin records named at once. */
export const THIN = 20;
/** What is asked next of each, at most. */
export const ASKED = 3;

const present = sql`LEFT JOIN car_status_span t ON t.club_id = c.club_id AND t.car_id = c.id AND t."to" IS NULL`;
const status = sql`coalesce(t.status::text, 'unknown')`;

/**
 * Cars by series, status and, as `standing`, month of building; a car whose month is not certain stands under none. Off the
 * tallies, where they are up to date.
 */
const lifeSql = (kept: boolean) =>
  kept
    ? keptSql("month", {})
    : sql`(SELECT c.series_id, ${status} AS text, ${builtMonth} AS standing, 1 AS count FROM car c ${present} WHERE ${standingRecordSql})`;

/** Per series and status how many records there are. */
export const statusSql = (kept: boolean): Prisma.Sql =>
  sql`SELECT series_id::text AS series, text AS status, sum(count)::int AS cars FROM ${lifeSql(kept)} AS life GROUP BY 1, 2`;

/** By series how many records have a number that another of the series has too, the first of each aside: so many fewer numbers than records. */
export const repeatedSql = sql`SELECT series_id::text AS series, sum(records - 1)::int AS repeated
  FROM (SELECT c.series_id, c.chassis_key, count(*) AS records FROM car c
    WHERE ${standingRecordSql} AND c.chassis_key IN (SELECT f.chassis_key FROM car f WHERE f.claim > 1) GROUP BY 1, 2) AS claimed
  GROUP BY 1`;

/** Per series, month of building and status. */
export const monthSql = (kept: boolean): Prisma.Sql =>
  sql`SELECT series_id::text AS series, text AS status, standing AS month, sum(count)::int AS cars
    FROM ${lifeSql(kept)} AS life GROUP BY 1, 2, 3`;

/** Gone for good: nobody can be asked about the car itself any more. */
const gone = sql`t.status IN ('dismantled', 'destroyed')`;

/** A series' own cars, or every one. */
const inSeries = (seriesId: string | undefined, row = sql`c`) =>
  seriesId === undefined ? Prisma.empty : sql`AND ${row}.series_id = ${seriesId}::uuid`;

/**
 * Of the cars that still exist as far as is known: how many values each record has; quartiles of that, and the thinnest.
 * A car is counted in its summary; one that changed since, or has none yet, here.
 */
function thicknessSql(seriesId: string | undefined): Prisma.Sql {
  return sql`changed AS MATERIALIZED (SELECT DISTINCT car_id FROM stale_car),
    thick AS MATERIALIZED (SELECT c.id, c.chassis, c.claim, c.chassis_key, c.series_id, ${status} AS status, c.built_text,
      CASE WHEN n.car_id IS NULL OR x.car_id IS NOT NULL
        THEN (SELECT count(*) FROM current_value v WHERE v.car_id = c.id)::int ELSE n.values END AS values
    FROM car c ${present} LEFT JOIN changed x ON x.car_id = c.id
    LEFT JOIN car_summary n ON n.club_id = c.club_id AND n.car_id = c.id
    WHERE ${standingRecordSql} AND (${gone}) IS NOT TRUE ${inSeries(seriesId)})`;
}

/** Cars that are not gone by how many values they have, as `number`, and by whether their building is dated. */
const thicknessRowsSql = (seriesId: string | undefined, kept: boolean) =>
  kept
    ? sql`rows AS (SELECT c.* FROM ${keptSql("thickness", {})} AS c WHERE c.text NOT IN ('dismantled', 'destroyed') ${inSeries(seriesId)})`
    : sql`${thicknessSql(seriesId)}, rows AS (SELECT status AS text, values::float8 AS number, 1 AS count,
        CASE WHEN built_text IS NULL THEN 'noBuilt' ELSE 'built' END AS standing FROM thick)`;

export function completenessSql(seriesId: string | undefined, kept: boolean): Prisma.Sql {
  const cars = (which: Prisma.Sql) => sql`coalesce(sum(n) FILTER (WHERE ${which}), 0)::int`;
  return sql`WITH ${thicknessRowsSql(seriesId, kept)},
    placed AS (SELECT text, standing, number, n, sum(n) OVER (ORDER BY number) AS upto, sum(n) OVER () AS total
      FROM (SELECT text, standing, number, sum(count) AS n FROM rows GROUP BY 1, 2, 3) AS counted)
    SELECT ${cars(sql`TRUE`)} AS cars, ${cars(sql`text = 'unknown'`)} AS "noStatus", ${cars(sql`standing = 'noBuilt'`)} AS "noBuilt",
      ${cars(sql`number = 0`)} AS nothing, ${quartilesSql(sql`number`)} FROM placed`;
}

const thinOrder = sql`(k.status = 'inUse') DESC, k.values, k.chassis_key, k.claim`;

/** The thinnest records, cars in use first: of those somebody can say something. */
export function thinSql(seriesId: string | undefined, kept: boolean): Prisma.Sql {
  const thin = kept
    ? sql`WITH thin AS (SELECT c.id, c.chassis, c.built_text, k.* FROM (SELECT k.car_id, k.series_id, k.status, k.values, k.chassis_key, k.claim
        FROM car_summary k WHERE k.status NOT IN ('dismantled', 'destroyed') ${inSeries(seriesId, sql`k`)}
        ORDER BY ${thinOrder} LIMIT ${THIN}::int) AS k JOIN car c ON c.id = k.car_id)`
    : sql`WITH ${thicknessSql(seriesId)}, thin AS (SELECT * FROM thick)`;
  return sql`${thin} SELECT k.id::text AS id, k.chassis, k.claim, k.status, k.built_text AS built, k.values, s.name AS series
    FROM thin k LEFT JOIN series s ON s.id = k.series_id ORDER BY ${thinOrder} LIMIT ${THIN}::int`;
}

/** Cars of a series looked at for what is commonly recorded, where that is not kept: a fixed sample, drawn by the hash of the id. */
const COMMON = 500;

/** Of how many cars of the series of those `asked` a characteristic is recorded. */
const commonSql = (kept: boolean) =>
  kept
    ? sql`common AS (SELECT t.series_id, t.characteristic, sum(t.count)::int AS cars FROM ${keptSql("known", {})} AS t
        WHERE t.series_id IN (SELECT series_id FROM asked) GROUP BY 1, 2)`
    : sql`looked AS MATERIALIZED (SELECT id, series_id FROM (
      SELECT o.id, o.series_id, row_number() OVER (PARTITION BY o.series_id ORDER BY md5(o.id::text)) AS place FROM car o
      WHERE o.series_id IN (SELECT series_id FROM asked) AND o.merged_into_id IS NULL) AS drawn WHERE place <= ${COMMON}::int),
    common AS (SELECT o.series_id, v.characteristic, count(*)::int AS cars
      FROM looked o JOIN current_value v ON v.car_id = o.id WHERE v.side <> 'right' GROUP BY 1, 2)`;

/** What is recorded of most other cars of each one's series and not of it, the commonest first. */
export function lackingSql(carIds: readonly string[], kept: boolean): Prisma.Sql {
  return sql`WITH asked AS (SELECT c.id, c.series_id FROM car c WHERE c.id = ANY(${[...carIds]}::uuid[])), ${commonSql(kept)}
    SELECT id::text AS id, characteristic, cars FROM (
      SELECT a.id, m.characteristic, m.cars, row_number() OVER (PARTITION BY a.id ORDER BY m.cars DESC, m.characteristic) AS place
      FROM asked a JOIN common m ON m.series_id = a.series_id
      WHERE NOT EXISTS (SELECT FROM current_value v WHERE v.car_id = a.id AND v.characteristic = m.characteristic)) AS lacking
    WHERE place <= ${ASKED}::int ORDER BY id, place`;
}
