import { Prisma } from "@trunnion/db";
import { standingRecordSql } from "../standing-record";

const sql = Prisma.sql;

/** Thin records named at once. */
export const THIN = 20;
/** What is asked next of each, at most. */
export const ASKED = 3;

const present = sql`LEFT JOIN car_status_span t ON t.club_id = c.club_id AND t.car_id = c.id AND t."to" IS NULL`;
const status = sql`coalesce(t.status::text, 'unknown')`;

/** Per series and status how many records there are, and how many different numbers they bear. */
export const statusSql = sql`SELECT c.series_id::text AS series, ${status} AS status, count(*)::int AS cars,
    count(DISTINCT c.chassis_key)::int AS numbers
  FROM car c ${present} WHERE ${standingRecordSql} GROUP BY 1, 2`;

/** How many different numbers of each series are known: two records of one number are one number. */
export const numberSql = sql`SELECT c.series_id::text AS series, count(DISTINCT c.chassis_key)::int AS numbers
  FROM car c WHERE ${standingRecordSql} GROUP BY 1`;

/** Per series, month of building and status; a car whose month is not certain stands under none. */
export const monthSql = sql`SELECT c.series_id::text AS series, ${status} AS status, count(*)::int AS cars,
    CASE WHEN date_trunc('month', c.built_earliest) = date_trunc('month', c.built_latest)
      THEN to_char(c.built_earliest, 'YYYY-MM') END AS month
  FROM car c ${present} WHERE ${standingRecordSql} GROUP BY 1, 2, 4`;

/** Gone for good: nobody can be asked about the car itself any more. */
const gone = sql`t.status IN ('dismantled', 'destroyed')`;

/** A series' own cars, or every one. */
const inSeries = (seriesId: string | undefined) =>
  seriesId === undefined ? Prisma.empty : sql`AND c.series_id = ${seriesId}::uuid`;

/**
 * Of the cars that still exist as far as is known: how many values each record has; quartiles of that, and the thinnest.
 * A car is counted in its summary; one that changed since, or has none yet, here.
 */
function thicknessSql(seriesId: string | undefined): Prisma.Sql {
  return sql`WITH changed AS MATERIALIZED (SELECT DISTINCT car_id FROM stale_car),
    thick AS MATERIALIZED (SELECT c.id, c.chassis, c.claim, c.chassis_key, c.series_id, ${status} AS status, c.built_text,
      CASE WHEN n.car_id IS NULL OR x.car_id IS NOT NULL
        THEN (SELECT count(*) FROM current_value v WHERE v.car_id = c.id)::int ELSE n.values END AS values
    FROM car c ${present} LEFT JOIN changed x ON x.car_id = c.id
    LEFT JOIN car_summary n ON n.club_id = c.club_id AND n.car_id = c.id
    WHERE ${standingRecordSql} AND (${gone}) IS NOT TRUE ${inSeries(seriesId)})`;
}

export function completenessSql(seriesId: string | undefined): Prisma.Sql {
  return sql`${thicknessSql(seriesId)} SELECT count(*)::int AS cars, count(*) FILTER (WHERE status = 'unknown')::int AS "noStatus",
      count(*) FILTER (WHERE built_text IS NULL)::int AS "noBuilt", count(*) FILTER (WHERE values = 0)::int AS nothing,
      percentile_cont(0.25) WITHIN GROUP (ORDER BY values) AS lower, percentile_cont(0.5) WITHIN GROUP (ORDER BY values) AS median,
      percentile_cont(0.75) WITHIN GROUP (ORDER BY values) AS upper FROM thick`;
}

/** The thinnest records, cars in use first: of those somebody can say something. */
export function thinSql(seriesId: string | undefined): Prisma.Sql {
  return sql`${thicknessSql(seriesId)} SELECT k.id::text AS id, k.chassis, k.claim, k.status, k.built_text AS built, k.values,
      s.name AS series FROM thick k LEFT JOIN series s ON s.id = k.series_id
    ORDER BY (k.status = 'inUse') DESC, k.values, k.chassis_key, k.claim LIMIT ${THIN}::int`;
}

/** Cars of a series looked at for what is commonly recorded: a fixed sample, drawn by the hash of the id. */
const COMMON = 500;

/** What is recorded of most other cars of each one's series and not of it, the commonest first. */
export function lackingSql(carIds: readonly string[]): Prisma.Sql {
  return sql`WITH asked AS (SELECT c.id, c.series_id FROM car c WHERE c.id = ANY(${[...carIds]}::uuid[])),
    looked AS MATERIALIZED (SELECT id, series_id FROM (
      SELECT o.id, o.series_id, row_number() OVER (PARTITION BY o.series_id ORDER BY md5(o.id::text)) AS place FROM car o
      WHERE o.series_id IN (SELECT series_id FROM asked) AND o.merged_into_id IS NULL) AS drawn WHERE place <= ${COMMON}::int),
    common AS (SELECT o.series_id, v.characteristic, count(*)::int AS cars
      FROM looked o JOIN current_value v ON v.car_id = o.id WHERE v.side <> 'right' GROUP BY 1, 2)
    SELECT id::text AS id, characteristic, cars FROM (
      SELECT a.id, m.characteristic, m.cars, row_number() OVER (PARTITION BY a.id ORDER BY m.cars DESC, m.characteristic) AS place
      FROM asked a JOIN common m ON m.series_id = a.series_id
      WHERE NOT EXISTS (SELECT FROM current_value v WHERE v.car_id = a.id AND v.characteristic = m.characteristic)) AS lacking
    WHERE place <= ${ASKED}::int ORDER BY id, place`;
}
