import { Prisma } from "@trunnion/db";
import type { Side } from "@trunnion/register";
import { quantileSql, quartilesSql } from "../quantile-sql";
import { type Counted, countedSql } from "../tally";
import { verdictsThat } from "../verdict-sql";

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
  readonly counted: Counted;
  /** Its values as {@link countedOnceSql} gave them, where counting them costs. */
  readonly once?: string;
}

const onSide = ({ side }: SpreadScope) =>
  side === undefined ? Prisma.empty : sql`AND p.side = ${side}::"Side"`;

/** Every kind of value with how many there are, as JSON: for a scope to be asked several things of. */
export const countedOnceSql = (scope: SpreadScope): Prisma.Sql =>
  sql`SELECT coalesce(json_agg(v), '[]')::text AS once FROM (SELECT p.value_kind, p.number, p.resolution, p.text, min(p.entered) AS entered,
    p.standing, p.year, sum(p.count)::int AS count FROM ${countedSql("value", scope.counted)} AS p
    WHERE p.characteristic = ${scope.key} ${onSide(scope)} GROUP BY 1, 2, 3, 4, 6, 7
    HAVING sum(p.count) > 0) AS v`;

/** Counted rows of the characteristic, one or more values each: how many is in `count`. */
function rowsSql(about: "value" | "told", scope: SpreadScope): Prisma.Sql {
  const { key, counted, once } = scope;
  if (about === "value" && once !== undefined)
    return sql`json_to_recordset(${once}::json) AS p(value_kind "ValueKind", number float8, resolution float8, text text, entered text,
      standing text, year int, count int) WHERE TRUE`;
  return sql`${countedSql(about, counted)} AS p WHERE p.characteristic = ${key} ${onSide(scope)}`;
}

/** Of how many cars something is known there, on whatever side. */
export const knownSql = ({ key, counted }: SpreadScope): Prisma.Sql =>
  sql`SELECT coalesce(sum(p.count), 0)::int AS cars FROM ${countedSql("known", counted)} AS p WHERE p.characteristic = ${key}`;

/** How many values there are, and of the numbers among them where they lie and how widely. */
export function summarySql(scope: SpreadScope): Prisma.Sql {
  return sql`WITH value AS MATERIALIZED (SELECT p.value_kind, p.number, min(p.resolution) AS resolution, sum(p.count) AS n
      FROM ${rowsSql("value", scope)} GROUP BY 1, 2),
    known AS (SELECT coalesce(sum(n), 0)::int AS "values", coalesce(sum(n) FILTER (WHERE value_kind = 'absent'), 0)::int AS absent FROM value),
    placed AS (SELECT number, resolution, n, sum(n) OVER (ORDER BY number) AS upto, sum(n) OVER () AS total
      FROM value WHERE value_kind = 'quantity'),
    lie AS (SELECT coalesce(max(total), 0)::int AS count, min(number) AS least, max(number) AS most,
        coalesce(min(resolution), 0) AS finest, count(*)::int AS different, ${quartilesSql(sql`number`)} FROM placed),
    away AS (SELECT far, n, sum(n) OVER (ORDER BY far) AS upto, sum(n) OVER () AS total
      FROM (SELECT abs(number - lie.median) AS far, n FROM placed, lie) AS one),
    apart AS (SELECT ${quantileSql("0.5", sql`far`)} AS mad, (sum(far * n) / sum(n))::float8 AS deviation FROM away)
    SELECT * FROM known, lie, apart`;
}

/** Values counted by how they stand. */
const stand = (standing: Parameters<typeof verdictsThat>[0]) =>
  sql`coalesce(sum(p.count) FILTER (WHERE p.standing IN ${verdictsThat(standing)}), 0)::int`;
const standings = sql`sum(p.count)::int AS count, ${stand("asSpecified")} AS "asSpecified", ${stand("differs")} AS differs,
      ${stand("accepted")} AS accepted, ${stand("notCompared")} AS "notCompared"`;

/** Values of one kind, counted by how they stand: text for what is named, a number for a quantity. */
export function eachSql(scope: SpreadScope): Prisma.Sql {
  return sql`SELECT p.value_kind::text AS kind, p.number, p.text, min(p.entered) AS entered, ${standings}
    FROM ${rowsSql("value", scope)} GROUP BY 1, 2, 3 ORDER BY sum(p.count) DESC, 1, 2, 3 LIMIT ${NAMED + 1}::int`;
}

const double = (si: number) => sql`${String(si)}::float8`;

/** Where classes lie, SI. */
export interface BinPlace {
  readonly from: number;
  readonly width: number;
}

/** Quantities counted by class and by how they stand; a value on an edge belongs above it, rounding aside. */
export function binnedSql(scope: SpreadScope, { from, width }: BinPlace): Prisma.Sql {
  return sql`SELECT floor((p.number - ${double(from)}) / ${double(width)} + 1e-9)::int AS place, ${standings}
    FROM ${rowsSql("value", scope)} AND p.number IS NOT NULL GROUP BY 1 ORDER BY 1`;
}

/** Counted rows by year and text, with quartiles of their numbers. */
function yearsSql(rows: Prisma.Sql): Prisma.Sql {
  return sql`WITH told AS (SELECT p.year, p.text, p.number, sum(p.count) AS n FROM ${rows} AND p.year IS NOT NULL GROUP BY 1, 2, 3
      HAVING sum(p.count) > 0),
    placed AS (SELECT year, text, number, n, sum(n) FILTER (WHERE number IS NOT NULL) OVER (PARTITION BY year, text ORDER BY number) AS upto,
      sum(n) FILTER (WHERE number IS NOT NULL) OVER (PARTITION BY year, text) AS total FROM told)
    SELECT year, text, sum(n)::int AS count, ${quartilesSql(sql`number`)} FROM placed GROUP BY 1, 2 ORDER BY 1, 3 DESC LIMIT 2000`;
}

/** Present values by the year in which the car was built. */
export const builtSql = (scope: SpreadScope): Prisma.Sql =>
  yearsSql(sql`${rowsSql("value", scope)} AND p.value_kind <> 'absent'`);

/** What was measured or fitted in each year, present values and those before them alike. */
export const recordedSql = (scope: SpreadScope): Prisma.Sql => yearsSql(rowsSql("told", scope));

/** Values further from the median than that. */
export interface Beyond {
  readonly median: number;
  readonly beyond: number;
}

/** How many values lie so far out. */
export const apartCountSql = (scope: SpreadScope, { median, beyond }: Beyond): Prisma.Sql =>
  sql`SELECT coalesce(sum(p.count), 0)::int AS count FROM ${rowsSql("value", scope)} AND abs(p.number - ${double(median)}) > ${double(beyond)}`;

/**
 * Those values, furthest first. From each end along the index of numbers, as many as are named and those like the last:
 * the bounds are a hair too wide, since an index knows no distance, and the distance itself decides.
 */
export function apartSql({ key, side, counted }: SpreadScope, { median, beyond }: Beyond): Prisma.Sql {
  const away = sql`abs(v.number - ${double(median)})`;
  const onSide = side === undefined ? Prisma.empty : sql`AND v.side = ${side}::"Side"`;
  const near = beyond * (1 - 1e-9);
  const end = (
    outside: Prisma.Sql,
    inwards: Prisma.Sql,
  ) => sql`(SELECT v.car_id, c.chassis, c.claim, c.chassis_key, v.side,
      v.value_kind, v.entered, v.number, v.resolution, v.text, ${away} AS away
    FROM current_value v JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id
    WHERE v.characteristic = ${key} ${onSide} AND ${outside} AND ${away} > ${double(beyond)} AND ${counted.where}
    ORDER BY v.number ${inwards} FETCH FIRST (${APART}::int) ROWS WITH TIES)`;
  return sql`SELECT chassis, claim, side::text AS side, value_kind AS "valueKind", entered, number, resolution, text
    FROM (${end(sql`v.number < ${double(median - near)}`, sql`ASC`)}
      UNION ALL ${end(sql`v.number > ${double(median + near)}`, sql`DESC`)}) AS ends
    ORDER BY away DESC, chassis_key, claim, side LIMIT ${APART}::int`;
}
