import { Prisma } from "@trunnion/db";
import { type Condition, chassisKey, foldText } from "@trunnion/register";
import { conditionSql, unknownSql } from "../condition-sql";
import type { Context } from "../context";
import { maySeeKeepers } from "../keeper/policy";
import { standingRecordSql } from "../standing-record";

const sql = Prisma.sql;

/** Which cars of the club are meant: everything given must hold. */
export interface CarChoice {
  /**
   * Part of any number or mark, blanks and dashes aside; or of the colour or the remarks, capitals and accents aside;
   * or a year of build. For those who may see keepers also part of a keeper's name. `%` and `_` are just signs.
   */
  readonly search?: string;
  /** A series' short name. */
  readonly series?: string;
  readonly condition?: Condition;
}

/** The cars of which the condition holds, or those of which the record does not say. */
export type Shown = "yes" | "unknown";

const joined = (parts: readonly Prisma.Sql[], word: " AND " | " OR ") =>
  Prisma.join([...parts], word, "(", ")");

function numberHolds(key: string): readonly Prisma.Sql[] {
  if (key === "") return [];
  return [
    sql`strpos(c.chassis_key, ${key}) > 0`,
    sql`EXISTS (SELECT FROM car_identity i WHERE i.club_id = c.club_id AND i.car_id = c.id AND strpos(i.number_key, ${key}) > 0)`,
  ];
}

/** Built in that year for certain, or as far as the text says so: "c. 1971". */
function yearHolds(search: string): readonly Prisma.Sql[] {
  if (!/^(?:19|20)\d\d$/.test(search)) return [];
  return [
    sql`(c.built_earliest >= ${`${search}-01-01`}::date AND c.built_latest <= ${`${search}-12-31`}::date)`,
    sql`strpos(c.built_text, ${search}) > 0`,
  ];
}

function wordsHold(search: string, keepers: boolean): readonly Prisma.Sql[] {
  const folded = foldText(search);
  if (folded === "") return [];
  const colour = sql`EXISTS (SELECT FROM current_value v WHERE v.club_id = c.club_id AND v.car_id = c.id
    AND v.characteristic = 'body.colour' AND strpos(folded_text(v.entered), ${folded}) > 0)`;
  const keeper = sql`EXISTS (SELECT FROM keepership k JOIN keeper p ON p.club_id = k.club_id AND p.id = k.keeper_id
    WHERE k.club_id = c.club_id AND k.car_id = c.id AND strpos(folded_text(p.name), ${folded}) > 0)`;
  return [colour, sql`strpos(folded_text(c.remarks), ${folded}) > 0`, ...(keepers ? [keeper] : [])];
}

/** Everything but the condition, for a WHERE over `car c`. A record that was found to be of another car is no car. */
export function baseSql(ctx: Context, { search = "", series }: CarChoice): Prisma.Sql {
  const text = search.trim();
  const found = [
    ...numberHolds(chassisKey(text)),
    ...yearHolds(text),
    ...wordsHold(text, maySeeKeepers(ctx)),
  ];
  return joined(
    [
      standingRecordSql,
      ...(series === undefined
        ? []
        : [sql`c.series_id = (SELECT s.id FROM series s WHERE s.slug = ${series})`]),
      ...(text === "" ? [] : [found.length === 0 ? sql`FALSE` : joined(found, " OR ")]),
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

/** Chassis key and claim of the last car of the page before, from its reference; the list goes on behind it. */
export function followingSql(reference: string): Prisma.Sql {
  const [chassis = "", claim = "1"] = reference.split("~");
  const place = /^\d{1,4}$/.test(claim) ? Number(claim) : 1;
  return sql`(c.chassis_key, c.claim) > (${chassisKey(chassis)}, ${place}::int)`;
}
