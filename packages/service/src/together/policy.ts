import { Prisma } from "@trunnion/db";
import { differsSql } from "../verdict-sql";

const sql = Prisma.sql;

/** Most cars looked at: beyond it a sample of so many, the same each time, drawn by the hash of the car's id. */
export const SAMPLE = 5_000;

/** What the first property is: that the car differs there from factory, or that it has a value of this text. */
export interface First {
  readonly key: string;
  /** A choice's code, a designation; left out: differs from factory. */
  readonly value?: string;
  /** Over `car c`. */
  readonly where: Prisma.Sql;
}

/** Verdicts of which it is neither known that the car differs nor that it does not. */
const told = sql`v.verdict NOT IN ('notRecorded', 'cannotTell')`;

/**
 * Cars of which the first property is known, and whether they have it: on either side is enough.
 * Kept, since the rest goes over it several times.
 */
function firstSql({ key, value, where }: First): Prisma.Sql {
  const has = value === undefined ? differsSql : sql`v.text = ${value}`;
  const known = value === undefined ? told : sql`TRUE`;
  return sql`SELECT v.car_id, bool_or(coalesce(${has}, FALSE)) AS has FROM current_value v
    JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id
    WHERE v.characteristic = ${key} AND ${known} AND ${where}
    GROUP BY v.car_id ORDER BY md5(v.car_id::text) LIMIT ${SAMPLE}::int`;
}

/** How many cars the first property is known of, before any sample is drawn. */
export function firstCountSql({ key, value, where }: First): Prisma.Sql {
  const known = value === undefined ? told : sql`TRUE`;
  return sql`SELECT count(DISTINCT v.car_id)::int AS cars FROM current_value v
    JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id WHERE v.characteristic = ${key} AND ${known} AND ${where}`;
}

/** For each other characteristic the fourfold table: of the cars of which both are known, how many have both, one, neither. */
export function fourfoldSql(first: First): Prisma.Sql {
  return sql`WITH a AS MATERIALIZED (${firstSql(first)}),
    b AS (SELECT v.car_id, v.characteristic, a.has AS first, bool_or(${differsSql}) AS second
      FROM a JOIN current_value v ON v.car_id = a.car_id
      WHERE v.characteristic <> ${first.key} AND ${told} GROUP BY 1, 2, 3)
    SELECT characteristic, count(*) FILTER (WHERE first AND second)::int AS both,
      count(*) FILTER (WHERE first AND NOT second)::int AS "firstOnly",
      count(*) FILTER (WHERE NOT first AND second)::int AS "secondOnly",
      count(*) FILTER (WHERE NOT first AND NOT second)::int AS neither
    FROM b GROUP BY 1 ORDER BY 1`;
}

/** What cars with both have there most often, as entered. */
export function commonestSql(first: First, keys: readonly string[]): Prisma.Sql {
  return sql`WITH a AS MATERIALIZED (${firstSql(first)})
    SELECT DISTINCT ON (characteristic) characteristic, value_kind::text AS kind, text, entered, cars FROM (
      SELECT v.characteristic, v.value_kind, v.text, min(v.entered) AS entered, count(DISTINCT v.car_id)::int AS cars
      FROM a JOIN current_value v ON v.car_id = a.car_id
      WHERE a.has AND v.characteristic = ANY(${[...keys]}::text[]) AND ${differsSql}
      GROUP BY v.characteristic, v.value_kind, v.text, v.number) AS value
    ORDER BY characteristic, cars DESC, entered`;
}
