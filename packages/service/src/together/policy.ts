import { Prisma } from "@trunnion/db";
import { type Counted, keptBlocks, noneSql } from "../tally";
import { differsSql, toldSql } from "../verdict-sql";

const sql = Prisma.sql;

/**
 * Most cars looked at where they are gone over one by one, since more changed than is counted at once: beyond it a sample of
 * so many, the same each time, drawn by the hash of the car's id.
 */
export const SAMPLE = 5_000;

/** What the first property is: that the car differs there from factory, or that it has a value of this text. */
export interface First {
  readonly key: string;
  /** A choice's code, a designation; left out: differs from factory. */
  readonly value?: string;
  /** Which cars: by blocks, or over `car c`. */
  readonly counted: Counted;
}

/** Of one kind of tallies which blocks are told of and which have it, by blocks and what else they are to be apart by. */
const bothSql = (
  about: "known" | "value",
  { apart, among, has, known }: Record<"apart" | "among" | "has" | "known", Prisma.Sql>,
) => sql`SELECT ${apart} b.block, coalesce(bit_or(b.cars) FILTER (WHERE ${has}), ${noneSql}) AS has, bit_or(b.cars) AS known
  FROM ${keptBlocks(about)} AND ${among} AND ${known} GROUP BY ${apart} b.block`;

const differing = { has: sql`t.standing = 'differs'`, known: sql`t.standing IN ('differs', 'compared')` };

/** For a WITH: in `first` by block the cars meant of which the first property is known, and those that have it. */
function firstBits({ key, value }: First, bits: Prisma.Sql): Prisma.Sql {
  const among = sql`t.characteristic = ${key}`;
  const both =
    value === undefined
      ? bothSql("known", { apart: sql``, among, ...differing })
      : bothSql("value", {
          apart: sql``,
          among,
          has: sql`coalesce(t.text = ${value}, FALSE)`,
          known: sql`TRUE`,
        });
  return sql`${bits}, first AS MATERIALIZED (SELECT f.block, f.has & h.yes AS has, f.known & h.yes AS known
    FROM (${both}) AS f JOIN truth h USING (block))`;
}

/** The fourfold tables of all cars meant, by the blocks of the tallies. */
const fourfoldBits = (first: First, bits: Prisma.Sql) => sql`WITH ${firstBits(first, bits)},
    second AS MATERIALIZED (${bothSql("known", {
      apart: sql`t.characteristic,`,
      among: sql`t.characteristic <> ${first.key}`,
      ...differing,
    })}),
    counted AS (SELECT s.characteristic, sum(bit_count(f.has & s.has))::int AS "both", sum(bit_count(f.has & s.known & ~s.has))::int AS "firstOnly",
      sum(bit_count(f.known & ~f.has & s.has))::int AS "secondOnly", sum(bit_count(f.known & ~f.has & s.known & ~s.has))::int AS neither
      FROM second s JOIN first f USING (block) GROUP BY 1)
  SELECT * FROM counted WHERE "both" + "firstOnly" + "secondOnly" + neither > 0 ORDER BY 1`;

/** What those with both have there most often, by the blocks. */
const commonestBits = (
  first: First,
  bits: Prisma.Sql,
  keys: readonly string[],
) => sql`WITH ${firstBits(first, bits)},
    d AS (SELECT t.characteristic, t.value_kind, t.text, t.number, t.entered, b.block, b.cars
      FROM ${keptBlocks("differing")} AND t.characteristic = ANY(${[...keys]}::text[])),
    value AS (SELECT characteristic, value_kind, text, min(entered) AS entered, sum(bit_count(d.cars & f.has))::int AS cars
      FROM d JOIN first f USING (block) WHERE bit_count(d.cars & f.has) > 0 GROUP BY characteristic, value_kind, text, number)
  SELECT DISTINCT ON (characteristic) characteristic, value_kind::text AS kind, text, entered, cars FROM value
  ORDER BY characteristic, cars DESC, entered`;

/**
 * Cars of which the first property is known, and whether they have it: on either side is enough.
 * Kept, since the rest goes over it several times.
 */
function firstSql({ key, value, counted: { where } }: First): Prisma.Sql {
  const has = value === undefined ? differsSql : sql`v.text = ${value}`;
  const known = value === undefined ? toldSql : sql`TRUE`;
  return sql`SELECT v.car_id, bool_or(coalesce(${has}, FALSE)) AS has FROM current_value v
    JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id
    WHERE v.characteristic = ${key} AND ${known} AND ${where}
    GROUP BY v.car_id ORDER BY md5(v.car_id::text) LIMIT ${SAMPLE}::int`;
}

/** How many cars the first property is known of, before any sample is drawn. */
export function firstCountSql(first: First): Prisma.Sql {
  const { key, value, counted } = first;
  if (counted.bits !== undefined)
    return sql`WITH ${firstBits(first, counted.bits)} SELECT coalesce(sum(bit_count(known)), 0)::int AS cars FROM first`;
  const { where } = counted;
  const known = value === undefined ? toldSql : sql`TRUE`;
  return sql`SELECT count(DISTINCT v.car_id)::int AS cars FROM current_value v
    JOIN car c ON c.club_id = v.club_id AND c.id = v.car_id WHERE v.characteristic = ${key} AND ${known} AND ${where}`;
}

/** For each other characteristic the fourfold table: of the cars of which both are known, how many have both, one, neither. */
export function fourfoldSql(first: First): Prisma.Sql {
  if (first.counted.bits !== undefined) return fourfoldBits(first, first.counted.bits);
  return sql`WITH a AS MATERIALIZED (${firstSql(first)}),
    b AS (SELECT v.car_id, v.characteristic, a.has AS first, bool_or(${differsSql}) AS second
      FROM a JOIN current_value v ON v.car_id = a.car_id
      WHERE v.characteristic <> ${first.key} AND ${toldSql} GROUP BY 1, 2, 3)
    SELECT characteristic, count(*) FILTER (WHERE first AND second)::int AS both,
      count(*) FILTER (WHERE first AND NOT second)::int AS "firstOnly",
      count(*) FILTER (WHERE NOT first AND second)::int AS "secondOnly",
      count(*) FILTER (WHERE NOT first AND NOT second)::int AS neither
    FROM b GROUP BY 1 ORDER BY 1`;
}

/** What cars with both have there most often, as entered. */
export function commonestSql(first: First, keys: readonly string[]): Prisma.Sql {
  if (first.counted.bits !== undefined) return commonestBits(first, first.counted.bits, keys);
  return sql`WITH a AS MATERIALIZED (${firstSql(first)})
    SELECT DISTINCT ON (characteristic) characteristic, value_kind::text AS kind, text, entered, cars FROM (
      SELECT v.characteristic, v.value_kind, v.text, min(v.entered) AS entered, count(DISTINCT v.car_id)::int AS cars
      FROM a JOIN current_value v ON v.car_id = a.car_id
      WHERE a.has AND v.characteristic = ANY(${[...keys]}::text[]) AND ${differsSql}
      GROUP BY v.characteristic, v.value_kind, v.text, v.number) AS value
    ORDER BY characteristic, cars DESC, entered`;
}
