import { Prisma } from "@trunnion/db";
import { type Characteristic, chassisKey } from "@trunnion/register";
import type { Context } from "../context";
import { type Counted, keptSql } from "../tally";

const sql = Prisma.sql;

/** In what order a list goes: by chassis number, by day of building, or the most changed first. */
export const listOrders = ["chassis", "built", "differing"] as const;
type NamedOrder = (typeof listOrders)[number];

/** By what the cars have of a characteristic, the lowest first or the highest; what is not recorded comes last. */
export interface ValueOrder {
  /** The characteristic's key. */
  readonly key: string;
  readonly descending: boolean;
}

export type ListOrder = NamedOrder | ValueOrder;

/** One by values with the characteristic it is by. */
interface SettledValueOrder extends Omit<ValueOrder, "key"> {
  readonly of: Characteristic;
  /** Of a quantity, SI: cars that have none up to there, in the direction of the order, are left out. */
  readonly upTo?: number;
}

/** An order settled. */
export type Order = NamedOrder | SettledValueOrder;

/** Rows that have number and claim: those of `car c`, or the summaries `s` alone, by which cars found in bits are put in order. */
export type Rows = "c" | "s";
const keys: Readonly<Record<Rows, Prisma.Sql>> = {
  c: sql`c.chassis_key, c.claim`,
  s: sql`s.chassis_key, s.claim`,
};

/** What a list is ordered by, over `car_summary s`. */
const summaryOrder: Readonly<Record<Exclude<NamedOrder, "chassis">, Prisma.Sql>> = {
  built: sql`s.built, s.chassis_key, s.claim`,
  differing: sql`s.differing DESC, s.chassis_key, s.claim`,
};

/** A car that has no value, but is known to have nothing there, comes behind those with one and before those not recorded. */
const rank = sql`CASE WHEN o.place IS NOT NULL THEN 0 WHEN o.car_id IS NOT NULL THEN 1 ELSE 2 END`;

/**
 * One place per car: of several sides the lowest, or the highest where that is first. Texts go as a reader expects, by the
 * Unicode collation; numbers in SI; choices, designations and days by their codes.
 */
function placesSql({ of, descending, upTo }: SettledValueOrder): Prisma.Sql {
  const ends = descending ? sql`max` : sql`min`;
  const value = {
    quantity: sql`v.number`,
    text: sql`v.text COLLATE "und-x-icu"`,
    choice: sql`v.text COLLATE "C"`,
    designation: sql`v.text COLLATE "C"`,
    date: sql`v.text COLLATE "C"`,
  }[of.kind];
  return sql`SELECT v.club_id, v.car_id, ${ends}(${value}) FILTER (WHERE v.value_kind <> 'absent') AS place
    FROM current_value v WHERE v.characteristic = ${of.key}
      ${upTo === undefined ? Prisma.empty : sql`AND v.number ${descending ? sql`>=` : sql`<=`} ${String(upTo)}::float8`}
    GROUP BY v.club_id, v.car_id`;
}

/** What the cars of a list are ordered by. */
export function orderSql(order: Order, rows: Rows = "c"): Prisma.Sql {
  if (order === "chassis") return keys[rows];
  if (typeof order === "string") return summaryOrder[order];
  return sql`${rank}, o.place ${order.descending ? sql`DESC` : sql`ASC`}, ${keys[rows]}`;
}

/** Where the rows of a list come from; those up to a value, whichever rows are meant, are of `car c`. */
export function fromSql(order: Order, rows: Rows = "c"): Prisma.Sql {
  // Each car by itself: the planner cannot know how few they are, and would read every car of the club.
  if (typeof order !== "string" && order.upTo !== undefined)
    return sql`(${placesSql(order)}) o JOIN LATERAL (SELECT * FROM car WHERE car.club_id = o.club_id AND car.id = o.car_id OFFSET 0) c ON TRUE`;
  const places = (key: Prisma.Sql) =>
    typeof order === "string" ? Prisma.empty : sql`LEFT JOIN (${placesSql(order)}) o ON ${key}`;
  if (rows === "s") return sql`car_summary s ${places(sql`o.club_id = s.club_id AND o.car_id = s.car_id`)}`;
  if (typeof order === "string" && order !== "chassis")
    return sql`car_summary s JOIN car c ON c.club_id = s.club_id AND c.id = s.car_id`;
  return sql`car c ${places(sql`o.club_id = c.club_id AND o.car_id = c.id`)}`;
}

/** Most values that are looked up car by car: of more all cars are read in their order. */
const MANY = 30_000;
/** Values of one characteristic that a car has at most: left, right, and of the whole. */
const VALUES_A_CAR = 3;

/**
 * How far to look along the values for a page of cars, by the tallies: from where the page before ended so many values
 * further on that they may well be of enough cars. Whoever finds too few cars there looks at all.
 */
export function upToSql(
  { of, descending }: SettledValueOrder,
  {
    kept,
    after,
    size,
  }: {
    readonly kept: NonNullable<Counted["kept"]>;
    readonly after: string | undefined;
    readonly size: number;
  },
): Prisma.Sql {
  const ascending = descending ? sql`DESC` : sql`ASC`;
  const { key, claim } = lastOf(after ?? "");
  const last = sql`SELECT ${descending ? sql`max` : sql`min`}(v.number) FROM car c
      JOIN current_value v ON v.club_id = c.club_id AND v.car_id = c.id
      WHERE c.chassis_key = ${key} AND c.claim = ${claim}::int AND v.characteristic = ${of.key}`;
  const before = sql`(SELECT max(b.upto) FROM walked b WHERE b.number ${descending ? sql`>=` : sql`<=`} (${last}))`;
  return sql`WITH walked AS MATERIALIZED (SELECT t.number, sum(sum(t.count)) OVER (ORDER BY t.number ${ascending}) AS upto
      FROM ${keptSql("value", kept)} AS t WHERE t.characteristic = ${of.key} AND t.number IS NOT NULL GROUP BY t.number)
    SELECT w.number FROM walked w
    WHERE w.upto < ${MANY} AND w.upto > ${(size + 1) * VALUES_A_CAR}::int + ${after === undefined ? sql`0` : sql`coalesce(${before}, 0)`}
    ORDER BY w.upto LIMIT 1`;
}

interface Last {
  readonly key: string;
  readonly claim: number;
}

function lastOf(reference: string): Last {
  const [chassis = "", claim = "1"] = reference.split("~");
  return { key: chassisKey(chassis), claim: /^\d{1,4}$/.test(claim) ? Number(claim) : 1 };
}

/** That a car comes behind the last one of the page before, which is given by its reference. */
export function followingSql(reference: string, order: NamedOrder = "chassis", rows: Rows = "c"): Prisma.Sql {
  const { key, claim } = lastOf(reference);
  if (order === "chassis") return sql`(${keys[rows]}) > (${key}, ${claim}::int)`;
  const last = (column: Prisma.Sql) =>
    sql`(SELECT l.${column} FROM car_summary l WHERE l.chassis_key = ${key} AND l.claim = ${claim}::int LIMIT 1)`;
  if (order === "built")
    return sql`(s.built, s.chassis_key, s.claim) > (${last(sql`built`)}, ${key}, ${claim}::int)`;
  return sql`s.differing <= ${last(sql`differing`)}
    AND (s.differing < ${last(sql`differing`)} OR (s.chassis_key, s.claim) > (${key}, ${claim}::int))`;
}

/**
 * The same in whatever order. Where it goes by values, where the page before ended is read first; no car follows one that
 * is not there.
 */
export async function behind(
  ctx: Context,
  reference: string,
  order: Order,
  rows: Rows = "c",
): Promise<Prisma.Sql> {
  if (typeof order === "string") return followingSql(reference, order, rows);
  const { key, claim } = lastOf(reference);
  const [last] = await ctx.db.$queryRaw<{ readonly rank: number; readonly place: string | null }[]>(
    sql`SELECT ${rank} AS rank, o.place::text AS place FROM ${fromSql(order)}
      WHERE c.chassis_key = ${key} AND c.claim = ${claim}::int LIMIT 1`,
  );
  if (!last) return sql`FALSE`;
  const later = sql`(${keys[rows]}) > (${key}, ${claim}::int)`;
  if (last.rank > 0) return sql`(${rank} > ${last.rank}::int OR (${rank} = ${last.rank}::int AND ${later}))`;
  // The shortest decimal of a double gives the same double back, so that the place is met exactly.
  const place = order.of.kind === "quantity" ? sql`${last.place}::float8` : sql`${last.place}::text`;
  const further = order.descending ? sql`o.place < ${place}` : sql`o.place > ${place}`;
  return sql`(${rank} > 0 OR ${further} OR (o.place = ${place} AND ${later}))`;
}
