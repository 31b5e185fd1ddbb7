import { CarStatus, Prisma } from "@trunnion/db";
import type { Condition } from "@trunnion/register";
import {
  absentSql,
  againstSql,
  codeSql,
  dateSql,
  numberSql,
  readingOlderThanSql,
  recordedSql,
  sidesDifferSql,
  type TruthSql,
  textHasSql,
  verdictSql,
} from "./value-sql";

export type { TruthSql } from "./value-sql";

type Of<O extends Condition["op"]> = Extract<Condition, { readonly op: O }>;

const sql = Prisma.sql;

const always: TruthSql = { yes: sql`TRUE`, no: sql`FALSE` };
const never: TruthSql = { yes: always.no, no: always.yes };

function joined(parts: readonly Prisma.Sql[], word: " AND " | " OR "): Prisma.Sql {
  const [only] = parts;
  return parts.length === 1 && only ? only : Prisma.join([...parts], word, "(", ")");
}

/** Kleene: yes where each is, no where one is not. */
function allOf(parts: readonly TruthSql[]): TruthSql {
  if (parts.length === 0) return always;
  return {
    yes: joined(
      parts.map(({ yes }) => yes),
      " AND ",
    ),
    no: joined(
      parts.map(({ no }) => no),
      " OR ",
    ),
  };
}

const negated = ({ yes, no }: TruthSql): TruthSql => ({ yes: no, no: yes });

/** Kleene: yes where one is, no where none can be. */
const anyOf = (parts: readonly TruthSql[]) =>
  parts.length === 0 ? never : negated(allOf(parts.map(negated)));

function seriesSql({ in: slugs }: Of<"series">): TruthSql {
  const yes = sql`EXISTS (SELECT FROM series s
    WHERE s.club_id = c.club_id AND s.id = c.series_id AND s.slug = ANY(${[...slugs]}::text[]))`;
  return { yes, no: sql`(c.series_id IS NOT NULL AND NOT ${yes})` };
}

const statuses: ReadonlySet<string> = new Set(Object.values(CarStatus));

/** The open span of a car is its status; without one, or where it says unknown, its status is unknown. */
function statusSql({ in: wanted }: Of<"status">): TruthSql {
  const codes = wanted.filter((code) => statuses.has(code));
  const span = (further: Prisma.Sql) => sql`EXISTS (SELECT FROM car_status_span s WHERE s.club_id = c.club_id
    AND s.car_id = c.id AND s."to" IS NULL AND s.status <> 'unknown' ${further})`;
  const yes = span(sql`AND s.status = ANY(${codes}::"CarStatus"[])`);
  return { yes, no: sql`(${span(Prisma.empty)} AND NOT ${yes})` };
}

/** Both ends of the span of possible days are known, or neither is; no day compares with none. */
function builtSql({ from, to }: Of<"built">): TruthSql {
  const known = sql`c.built_earliest IS NOT NULL AND c.built_latest IS NOT NULL`;
  const inside = [
    known,
    ...(from === undefined ? [] : [sql`c.built_earliest >= ${from}::date`]),
    ...(to === undefined ? [] : [sql`c.built_latest <= ${to}::date`]),
  ];
  const outside = [
    ...(from === undefined ? [] : [sql`c.built_latest < ${from}::date`]),
    ...(to === undefined ? [] : [sql`c.built_earliest > ${to}::date`]),
  ];
  const yes = joined(inside, " AND ");
  const beyond = outside.length === 0 ? sql`FALSE` : joined(outside, " OR ");
  return { yes: sql`(${yes}) IS TRUE`, no: sql`(${known} AND NOT ((${yes}) IS TRUE) AND ${beyond}) IS TRUE` };
}

/**
 * A condition over the cars of one club, for the WHERE of one query: the predicates speak of a row `c` of `car`, and
 * say of each car exactly what `evaluate` says of its record (a property test holds both to that). Every value is
 * bound; the club is named by each table's key and held by row-level security. It reads the current values, so it
 * answers as of when they were last worked out.
 *
 * @param eventDay ISO day of the event; for a search, today
 */
export function conditionSql(condition: Condition, eventDay: string): TruthSql {
  const within = (part: Condition) => conditionSql(part, eventDay);
  switch (condition.op) {
    case "always":
      return always;
    case "all":
      return allOf(condition.of.map(within));
    case "any":
      return anyOf(condition.of.map(within));
    case "not":
      return negated(within(condition.of));
    case "series":
      return seriesSql(condition);
    case "status":
      return statusSql(condition);
    case "built":
      return builtSql(condition);
    case "recorded":
      return recordedSql(condition);
    case "absent":
      return absentSql(condition);
    case "number":
      return numberSql(condition);
    case "code":
      return codeSql(condition);
    case "textHas":
      return textHasSql(condition);
    case "date":
      return dateSql(condition, eventDay);
    case "verdict":
      return verdictSql(condition);
    case "against":
      return againstSql(condition);
    case "sidesDiffer":
      return sidesDifferSql(condition);
    case "readingOlderThan":
      return readingOlderThanSql(condition, eventDay);
  }
}

/** Cars of which neither can be said. */
export const unknownSql = ({ yes, no }: TruthSql): Prisma.Sql => sql`(NOT ${yes} AND NOT ${no})`;

/** `yes`, `no` or `unknown`, as text. */
export const truthSql = ({ yes, no }: TruthSql): Prisma.Sql =>
  sql`CASE WHEN ${yes} THEN 'yes' WHEN ${no} THEN 'no' ELSE 'unknown' END`;
