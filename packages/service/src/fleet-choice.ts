import { Prisma } from "@trunnion/db";
import { type CharacteristicBook, type Condition, refused, sayCondition } from "@trunnion/register";
import { conditionBits, everyCarSql, truthBitsSql } from "./condition-bits";
import { leansOnSummary } from "./condition-sql";
import type { Context } from "./context";
import { conditionAsked } from "./filter";
import { choiceSql } from "./register-list/policy";
import { refreshSearchIndex } from "./search-index";
import { listSeries, type SeriesLine } from "./series";
import { blocksOf, type Counted } from "./tally";

/** Which cars a fleet page speaks of: every one, those of a series, those of which a condition holds for certain. */
export interface FleetChoice {
  /** A series' short name. */
  readonly series?: string;
  readonly condition?: Condition;
  /** Name of a saved filter, own or shared; with a condition beside it both must hold. */
  readonly filter?: string;
}

/** A choice settled: the cars for a WHERE over `car c`, and what it is in words. */
export interface ChosenFleet {
  readonly where: Prisma.Sql;
  readonly series: readonly SeriesLine[];
  /** Short name of the series it is narrowed to. */
  readonly chosenSeries?: string;
  readonly condition?: { readonly is: Condition; readonly said: string };
  /** Notes of changed cars that a condition which leans on summaries does not know yet. */
  readonly stale: number;
}

/**
 * Settles which cars are meant.
 *
 * @throws Refusal SERIES_NOT_FOUND, FILTER_NOT_FOUND
 */
export async function chosenFleet(
  ctx: Context,
  { series: slug, condition: asked, filter }: FleetChoice,
  book: CharacteristicBook,
): Promise<ChosenFleet> {
  const series = await listSeries(ctx);
  if (slug !== undefined && !series.some((one) => one.slug === slug))
    throw refused("SERIES_NOT_FOUND", { series: slug, known: series.map((one) => one.slug) });
  const condition = await conditionAsked(ctx, {
    ...(filter === undefined ? {} : { filter }),
    ...(asked === undefined ? {} : { condition: asked }),
  });
  const leans = condition !== undefined && leansOnSummary(condition);
  const stale = leans ? await refreshSearchIndex(ctx, book) : 0;
  const names = new Map(series.map((one) => [one.slug, one.name]));
  const say = (is: Condition) =>
    sayCondition(is, book, { series: names, system: ctx.club.unitSystem, day: "today" });
  const choice = {
    ...(slug === undefined ? {} : { series: slug }),
    ...(condition === undefined ? {} : { condition }),
  };
  return {
    where: choiceSql(ctx, choice),
    series,
    stale,
    ...(slug === undefined ? {} : { chosenSeries: slug }),
    ...(condition === undefined ? {} : { condition: { is: condition, said: say(condition) } }),
  };
}

/**
 * The cars meant as the bits `yes` of `truth`, for a WITH. Found once and handed to each statement that counts by them: so a
 * condition of many parts costs a page no more than one of few.
 */
async function bitsOf(ctx: Context, { condition, chosenSeries }: ChosenFleet): Promise<Prisma.Sql> {
  const among = everyCarSql(chosenSeries === undefined ? {} : { series: chosenSeries });
  const truth = truthBitsSql({ ...conditionBits(condition?.is ?? { op: "always" }, ctx.today), among });
  const found = await ctx.db.$queryRaw<{ block: number; yes: string }[]>(
    Prisma.sql`WITH ${truth} SELECT block, yes::text AS yes FROM truth WHERE bit_count(yes) > 0`,
  );
  const blocks = found.map(({ block }) => block);
  const cars = found.map(({ yes }) => yes);
  return Prisma.sql`truth AS MATERIALIZED (SELECT * FROM unnest(${blocks}::int[], ${blocksOf(cars)}) AS h(block, yes))`;
}

/**
 * Where counts of the cars meant come from: the tallies, brought up to date first, for every car and for those of a series, and
 * their blocks for those of which a condition holds, or where the question is of blocks anyhow. Where more changed than is
 * worked out at once, they are counted one by one.
 */
export async function countedBy(
  ctx: Context,
  fleet: ChosenFleet,
  book: CharacteristicBook,
  { byBlocks = fleet.condition !== undefined }: { readonly byBlocks?: boolean } = {},
): Promise<Counted> {
  const { where, chosenSeries } = fleet;
  if ((await refreshSearchIndex(ctx, book)) > 0) return { where };
  if (byBlocks) return { where, bits: await bitsOf(ctx, fleet) };
  return { where, kept: chosenSeries === undefined ? {} : { series: chosenSeries } };
}
