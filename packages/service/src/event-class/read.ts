import {
  type CarView,
  type CharacteristicBook,
  type Condition,
  conditionSchema,
  type Eligibility,
  eligibilityOf,
  type SayOptions,
  sayCondition,
} from "@trunnion/register";
import type { Assessment } from "../assessment";
import type { Context } from "../context";
import { readStored } from "../stored-row";

/** A class of a rule set. */
export interface RuledClass {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly condition: Condition;
  readonly said: string;
}

/** How one car stands in one class: what is in its way, and what would have to be put back. */
export interface ClassStanding extends Eligibility {
  readonly id: string;
  readonly code: string;
  readonly name: string;
}

/** What conditions are said with: the names of the club's series, and its units. */
export async function sayOptions(ctx: Context) {
  const series = await ctx.db.series.findMany({
    select: { slug: true, name: true },
    orderBy: { ordinal: "asc" },
  });
  const say: SayOptions = {
    series: new Map(series.map(({ slug, name }) => [slug, name])),
    system: ctx.club.unitSystem,
  };
  return { series, say };
}

interface Saying {
  readonly book: CharacteristicBook;
  readonly say: SayOptions;
}

/** The classes of a rule set, by their codes. */
export async function classesOf(
  ctx: Context,
  ruleSetId: string,
  { book, say }: Saying,
): Promise<readonly RuledClass[]> {
  const rows = await ctx.db.eventClass.findMany({ where: { ruleSetId }, orderBy: { code: "asc" } });
  return rows.map(({ id, code, name, eligibility }) => {
    const condition = readStored(conditionSchema, eligibility, `class "${code}"`);
    return { id, code, name, condition, said: sayCondition(condition, book, say) };
  });
}

/** A car as conditions see it on a day. */
export function carViewOf(
  { record, state, deviations }: Assessment,
  { eventDay, book }: Pick<CarView, "eventDay" | "book">,
): CarView {
  return {
    status: record.status,
    basis: record.basis,
    state,
    deviations,
    eventDay,
    book,
    ...(record.series === null ? {} : { seriesSlug: record.series.slug }),
  };
}

/** How a car stands in each of some classes. */
export function classStandings(
  classes: readonly RuledClass[],
  view: CarView,
  saying: Saying,
): readonly ClassStanding[] {
  return classes.map(({ id, code, name, condition }) => ({
    id,
    code,
    name,
    ...eligibilityOf(condition, view, saying),
  }));
}
