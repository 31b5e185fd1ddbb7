import { CarStatus, Prisma } from "@trunnion/db";
import { type Condition, comparedVerdicts, nodesOf } from "@trunnion/register";
import {
  absentSql,
  againstSql,
  codeSql,
  dateSql,
  numberSql,
  partSql,
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

const always: TruthSql = { yes: sql`TRUE`, no: sql`FALSE`, is: sql`TRUE` };

function joined(parts: readonly Prisma.Sql[], word: " AND " | " OR "): Prisma.Sql {
  const [only] = parts;
  return parts.length === 1 && only ? only : Prisma.join([...parts], word, "(", ")");
}

/** Kleene: yes where each is, no where one is not; the database's AND over its truths is the same. */
function allOf(parts: readonly TruthSql[]): TruthSql {
  if (parts.length === 0) return always;
  const each = (side: keyof TruthSql) => parts.map((part) => part[side]);
  return {
    yes: joined(each("yes"), " AND "),
    no: joined(each("no"), " OR "),
    is: joined(each("is"), " AND "),
  };
}

const negated = ({ yes, no, is }: TruthSql): TruthSql => ({ yes: no, no: yes, is: sql`NOT (${is})` });

/** Kleene: yes where one is, no where each is not. */
function anyOf(parts: readonly TruthSql[]): TruthSql {
  if (parts.length === 0) return negated(always);
  const each = (side: keyof TruthSql) => parts.map((part) => part[side]);
  return {
    yes: joined(each("yes"), " OR "),
    no: joined(each("no"), " AND "),
    is: joined(each("is"), " OR "),
  };
}

function seriesSql({ in: slugs }: Of<"series">): TruthSql {
  const yes = sql`EXISTS (SELECT FROM series s
    WHERE s.club_id = c.club_id AND s.id = c.series_id AND s.slug = ANY(${[...slugs]}::text[]))`;
  return partSql(yes, sql`(c.series_id IS NOT NULL AND NOT ${yes})`, sql`c.series_id IS NOT NULL`);
}

const statuses: ReadonlySet<string> = new Set(Object.values(CarStatus));

/** The open span of a car is its status; without one, or where it says unknown, its status is unknown. */
function statusSql({ in: wanted }: Of<"status">): TruthSql {
  const codes = wanted.filter((code) => statuses.has(code));
  const span = (further: Prisma.Sql) => sql`EXISTS (SELECT FROM car_status_span s WHERE s.club_id = c.club_id
    AND s.car_id = c.id AND s."to" IS NULL AND s.status <> 'unknown' ${further})`;
  const yes = span(sql`AND s.status = ANY(${codes}::"CarStatus"[])`);
  return partSql(yes, sql`(${span(Prisma.empty)} AND NOT ${yes})`, span(Prisma.empty));
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
  return partSql(sql`(${yes}) IS TRUE`, sql`(${known} AND NOT ((${yes}) IS TRUE) AND ${beyond}) IS TRUE`);
}

function knownSql({ what }: Of<"known">): TruthSql {
  const yes = {
    series: sql`c.series_id IS NOT NULL`,
    status: sql`EXISTS (SELECT FROM car_status_span s WHERE s.club_id = c.club_id
      AND s.car_id = c.id AND s."to" IS NULL AND s.status <> 'unknown')`,
    decade: sql`(floor(extract(year FROM c.built_earliest) / 10) = floor(extract(year FROM c.built_latest) / 10)) IS TRUE`,
  }[what];
  return { yes, no: sql`NOT ${yes}`, is: yes };
}

/** By the summary: of 60 values a car it would have to read each. */
const summed = (holds: Prisma.Sql) =>
  sql`EXISTS (SELECT FROM car_summary s WHERE s.club_id = c.club_id AND s.car_id = c.id AND ${holds})`;

function anyVerdictSql({ in: wanted }: Of<"anyVerdict">): TruthSql {
  const has = (some: readonly string[]) => summed(sql`s.verdicts && ${[...some]}::"Verdict"[]`);
  const yes = has(wanted);
  return partSql(yes, sql`(${has(comparedVerdicts)} AND NOT ${yes})`, has(comparedVerdicts));
}

function modifiedSql({ in: wanted }: Of<"modified">): TruthSql {
  const yes = summed(sql`s.modified && ${[...wanted]}::text[]`);
  return { yes, no: sql`NOT ${yes}`, is: yes };
}

/** Whether a condition leans on `car_summary`, which whoever asks has to bring up to date before. */
export const leansOnSummary = (condition: Condition): boolean =>
  nodesOf(condition).some(({ op }) => op === "anyVerdict" || op === "modified");

/**
 * A condition over the cars of one club, for the WHERE of one query: the predicates speak of a row `c` of `car`, and
 * say of each car exactly what `evaluate` says of its record (a property test holds both to that). Every value is
 * bound; the club is named by each table's key and held by row-level security. It reads the current values, so it
 * answers as of when they were last worked out; where it `leansOnSummary`, as of when that was.
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
    case "known":
      return knownSql(condition);
    case "anyVerdict":
      return anyVerdictSql(condition);
    case "modified":
      return modifiedSql(condition);
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
export const unknownSql = ({ is }: TruthSql): Prisma.Sql => sql`(${is}) IS NULL`;
