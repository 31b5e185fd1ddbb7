import { Prisma } from "@trunnion/db";
import type { Condition } from "@trunnion/register";
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
