import { Prisma } from "@trunnion/db";
import type { Side } from "@trunnion/register";

const sql = Prisma.sql;

/** Most kinds of value that are shown each by itself; of quantities beyond this classes are made. */
export const EACH = 12;
/** Most kinds of value named; the rest is counted together. */
export const NAMED = 30;
/** Most cars named of those that stand apart. */
export const APART = 20;

/** Whose values of what. */
export interface SpreadScope {
  readonly key: string;
  readonly side?: Side;
  /** Over `car c`. */
  readonly where: Prisma.Sql;
}

/**
 * How a value stands against factory, in the four ways a drawing can keep apart: as it should be, differing, accepted or
 * not to be told, and compared with nothing.
 */
export const standingSql = sql`CASE WHEN v.verdict IN ('asSpecified', 'insideLimits') THEN 'asSpecified'
  WHEN v.verdict IN ('outsideLimits', 'differentPart', 'added', 'missing') THEN 'differs'
  WHEN v.verdict = 'notRecorded' THEN 'notCompared' ELSE 'accepted' END`;

/** The values meant, one row each, kept so that what is worked out of them reads the table once. */
function valuesSql({ key, side, where }: SpreadScope, columns: Prisma.Sql): Prisma.Sql {
  const onSide = side === undefined ? Prisma.empty : sql`AND v.side = ${side}::"Side"`;
  return sql`SELECT ${columns} FROM current_value v JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id
    WHERE v.characteristic = ${key} ${onSide} AND ${where}`;
}

/** How many cars are meant at all. */
export const carsSql = (where: Prisma.Sql): Prisma.Sql =>
  sql`SELECT count(*)::int AS cars FROM car c WHERE ${where}`;

/** How many values there are, of how many cars, and of the numbers among them where they lie and how widely. */
export function summarySql(scope: SpreadScope): Prisma.Sql {
  return sql`WITH value AS MATERIALIZED (${valuesSql(scope, sql`v.car_id, v.value_kind, v.number, v.resolution`)}),
    known AS (SELECT count(*)::int AS "values", count(DISTINCT car_id)::int AS known,
        count(*) FILTER (WHERE value_kind = 'absent')::int AS absent FROM value),
    lie AS (SELECT count(*)::int AS count, min(number) AS least, max(number) AS most, coalesce(min(resolution), 0) AS finest,
        count(DISTINCT number)::int AS different,
        percentile_cont(0.25) WITHIN GROUP (ORDER BY number) AS lower,
        percentile_cont(0.5) WITHIN GROUP (ORDER BY number) AS median,
        percentile_cont(0.75) WITHIN GROUP (ORDER BY number) AS upper FROM value WHERE value_kind = 'quantity'),
    apart AS (SELECT percentile_cont(0.5) WITHIN GROUP (ORDER BY abs(number - lie.median)) AS mad,
        avg(abs(number - lie.median)) AS deviation FROM value, lie WHERE value_kind = 'quantity')
    SELECT * FROM known, lie, apart`;
}

/** Values of one kind, counted by how they stand: text for what is named, a number for a quantity. */
export function eachSql(scope: SpreadScope): Prisma.Sql {
  const values = valuesSql(scope, sql`v.value_kind, v.number, v.text, v.entered, ${standingSql} AS standing`);
  return sql`SELECT value_kind::text AS kind, number, text, min(entered) AS entered, count(*)::int AS count,
      count(*) FILTER (WHERE standing = 'asSpecified')::int AS "asSpecified",
      count(*) FILTER (WHERE standing = 'differs')::int AS differs,
      count(*) FILTER (WHERE standing = 'accepted')::int AS accepted,
      count(*) FILTER (WHERE standing = 'notCompared')::int AS "notCompared"
    FROM (${values}) AS value GROUP BY 1, 2, 3 ORDER BY count(*) DESC, 1, 2, 3 LIMIT ${NAMED + 1}::int`;
}

const double = (si: number) => sql`${String(si)}::float8`;

/** Where classes lie, SI. */
export interface BinPlace {
  readonly from: number;
  readonly width: number;
}

/** Quantities counted by class and by how they stand; a value on an edge belongs above it, rounding aside. */
export function binnedSql(scope: SpreadScope, { from, width }: BinPlace): Prisma.Sql {
  const values = valuesSql(scope, sql`v.number, ${standingSql} AS standing`);
  return sql`SELECT floor((number - ${double(from)}) / ${double(width)} + 1e-9)::int AS place, count(*)::int AS count,
      count(*) FILTER (WHERE standing = 'asSpecified')::int AS "asSpecified",
      count(*) FILTER (WHERE standing = 'differs')::int AS differs,
      count(*) FILTER (WHERE standing = 'accepted')::int AS accepted,
      count(*) FILTER (WHERE standing = 'notCompared')::int AS "notCompared"
    FROM (${values}) AS value WHERE number IS NOT NULL GROUP BY 1 ORDER BY 1`;
}

/** What a year is that values are told by: that of building, where the record is sure of it. */
const builtYear = sql`CASE WHEN extract(year FROM c.built_earliest) = extract(year FROM c.built_latest)
  THEN extract(year FROM c.built_earliest)::int END`;

const quartiles = sql`percentile_cont(0.25) WITHIN GROUP (ORDER BY number) AS lower,
  percentile_cont(0.5) WITHIN GROUP (ORDER BY number) AS median,
  percentile_cont(0.75) WITHIN GROUP (ORDER BY number) AS upper`;

/** Present values by the year in which the car was built. */
export function builtSql(scope: SpreadScope): Prisma.Sql {
  const values = valuesSql(scope, sql`v.value_kind, v.number, v.text, ${builtYear} AS year`);
  return sql`SELECT year, text, count(*)::int AS count, ${quartiles} FROM (${values}) AS value
    WHERE year IS NOT NULL AND value_kind <> 'absent' GROUP BY 1, 2 ORDER BY 1, 3 DESC LIMIT 2000`;
}

/**
 * What was measured or fitted in each year, present values and those before them alike: readings by their day, changes by
 * the latest day their date allows.
 */
export function recordedSql({ key, side, where }: SpreadScope): Prisma.Sql {
  const onSide = (alias: Prisma.Sql) =>
    side === undefined ? Prisma.empty : sql`AND ${alias}.side = ${side}::"Side"`;
  return sql`SELECT year, text, count(*)::int AS count, ${quartiles} FROM (
      SELECT extract(year FROM s."on")::int AS year, r.number, r.text FROM reading r
        JOIN setting_sheet s ON s.club_id = r.club_id AND s.id = r.setting_sheet_id
        JOIN car c ON c.club_id = s.club_id AND c.id = s.car_id
        WHERE r.characteristic = ${key} ${onSide(sql`r`)} AND r.value_kind <> 'absent' AND s.superseded_at IS NULL AND ${where}
      UNION ALL
      SELECT extract(year FROM m.fitted_latest)::int, h.after_number, h.after_text FROM modification_change h
        JOIN modification m ON m.club_id = h.club_id AND m.id = h.modification_id
        JOIN car c ON c.club_id = m.club_id AND c.id = m.car_id
        WHERE h.characteristic = ${key} ${onSide(sql`h`)} AND h.after_value_kind <> 'absent' AND m.superseded_at IS NULL
          AND m.fitted_latest IS NOT NULL AND ${where}) AS told
    GROUP BY 1, 2 ORDER BY 1, 3 DESC LIMIT 2000`;
}

/** Values further from the median than that, furthest first. */
export function apartSql(
  scope: SpreadScope,
  { median, beyond }: { readonly median: number; readonly beyond: number },
): Prisma.Sql {
  const away = sql`abs(v.number - ${double(median)})`;
  const values = valuesSql(
    { ...scope, where: sql`${scope.where} AND v.number IS NOT NULL AND ${away} > ${double(beyond)}` },
    sql`c.chassis, c.claim, c.chassis_key, v.side::text AS side, v.value_kind AS "valueKind", v.entered, v.number, v.resolution,
      v.text, count(*) OVER ()::int AS total`,
  );
  return sql`${values} ORDER BY ${away} DESC, c.chassis_key, c.claim, v.side LIMIT ${APART}::int`;
}
