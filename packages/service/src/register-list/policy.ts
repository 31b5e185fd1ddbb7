import { Prisma } from "@trunnion/db";
import { type Condition, chassisKey } from "@trunnion/register";
import { conditionSql, unknownSql } from "../condition-sql";
import type { Context } from "../context";
import { maySeeKeepers } from "../keeper/policy";
import { type Searched, searchHolds } from "../search-index";
import { standingRecordSql } from "../standing-record";

const sql = Prisma.sql;

/** Which cars of the club are meant: everything given must hold. */
export interface CarChoice {
  /** What is looked for, as `searchedIn` read it. */
  readonly search?: Searched;
  /** A series' short name. */
  readonly series?: string;
  readonly condition?: Condition;
}

/** The cars of which the condition holds, or those of which the record does not say. */
export type Shown = "yes" | "unknown";

const joined = (parts: readonly Prisma.Sql[], word: " AND " | " OR ") =>
  Prisma.join([...parts], word, "(", ")");

/** Everything but the condition, for a WHERE over `car c`. A record that was found to be of another car is no car. */
export function baseSql(ctx: Context, { search, series }: CarChoice): Prisma.Sql {
  return joined(
    [
      standingRecordSql,
      ...(series === undefined
        ? []
        : [sql`c.series_id = (SELECT s.id FROM series s WHERE s.slug = ${series})`]),
      ...(search === undefined ? [] : [searchHolds(search, maySeeKeepers(ctx))]),
    ],
    " AND ",
  );
}

/** The cars chosen, for a WHERE over `car c`: unknown is never among those that fit. */
export function choiceSql(ctx: Context, choice: CarChoice, show: Shown = "yes"): Prisma.Sql {
  const base = baseSql(ctx, choice);
  if (choice.condition === undefined) return base;
  const truth = conditionSql(choice.condition, ctx.today);
  return sql`${base} AND ${show === "yes" ? truth.yes : unknownSql(truth)}`;
}

/** In what order a list goes: by chassis number, by day of building, or the most changed first. */
export const listOrders = ["chassis", "built", "differing"] as const;
export type ListOrder = (typeof listOrders)[number];

/** What a list is ordered by, over `car c` and, but for the first, `car_summary s`. */
export const orderSql: Readonly<Record<ListOrder, Prisma.Sql>> = {
  chassis: sql`c.chassis_key, c.claim`,
  built: sql`s.built, s.chassis_key, s.claim`,
  differing: sql`s.differing DESC, s.chassis_key, s.claim`,
};

/** Where the rows of a list come from. */
export const fromSql = (order: ListOrder): Prisma.Sql =>
  order === "chassis"
    ? sql`car c`
    : sql`car_summary s JOIN car c ON c.club_id = s.club_id AND c.id = s.car_id`;

/** That a car comes behind the last one of the page before, which is given by its reference. */
export function followingSql(reference: string, order: ListOrder = "chassis"): Prisma.Sql {
  const [chassis = "", claim = "1"] = reference.split("~");
  const place = /^\d{1,4}$/.test(claim) ? Number(claim) : 1;
  const key = chassisKey(chassis);
  if (order === "chassis") return sql`(c.chassis_key, c.claim) > (${key}, ${place}::int)`;
  const last = (column: Prisma.Sql) =>
    sql`(SELECT l.${column} FROM car_summary l WHERE l.chassis_key = ${key} AND l.claim = ${place}::int LIMIT 1)`;
  if (order === "built")
    return sql`(s.built, s.chassis_key, s.claim) > (${last(sql`built`)}, ${key}, ${place}::int)`;
  return sql`s.differing <= ${last(sql`differing`)}
    AND (s.differing < ${last(sql`differing`)} OR (s.chassis_key, s.claim) > (${key}, ${place}::int))`;
}
