import { type NumberPattern, refused } from "@trunnion/register";
import type { Context } from "../context";
import { dayOf } from "../day";

/** A series, for filters. */
export interface SeriesLine {
  readonly slug: string;
  readonly name: string;
}

/** The club's series, in order. */
export async function listSeries(ctx: Context): Promise<readonly SeriesLine[]> {
  return ctx.db.series.findMany({ select: { slug: true, name: true }, orderBy: { ordinal: "asc" } });
}

/** What a series says of its cars' numbers, dates and options. */
export interface SeriesDetail extends SeriesLine {
  readonly id: string;
  readonly pattern: NumberPattern;
  /** ISO days, both included. */
  readonly builtFrom: string;
  readonly builtTo: string;
  readonly builtCount?: number;
  readonly options: readonly { readonly code: string; readonly label: string }[];
}

/** The club's series with their number patterns, build periods and options, in order. */
export async function listSeriesDetails(ctx: Context): Promise<readonly SeriesDetail[]> {
  const rows = await ctx.db.series.findMany({
    include: { options: { select: { code: true, label: true }, orderBy: { code: "asc" } } },
    orderBy: { ordinal: "asc" },
  });
  return rows.map((row) => ({
    id: row.id,
    slug: row.slug,
    name: row.name,
    pattern: {
      series: row.name,
      prefix: row.numberPrefix,
      digits: row.numberDigits,
      first: row.firstSerial,
      last: row.lastSerial,
      suffixes: row.numberSuffixes,
    },
    builtFrom: dayOf(row.builtFrom),
    builtTo: dayOf(row.builtTo),
    ...(row.builtCount === null ? {} : { builtCount: row.builtCount }),
    options: row.options,
  }));
}

/**
 * One series by its short name.
 *
 * @throws Refusal SERIES_NOT_FOUND
 */
export async function findSeries(ctx: Context, slug: string): Promise<SeriesDetail> {
  const all = await listSeriesDetails(ctx);
  const found = all.find((one) => one.slug === slug);
  if (!found) throw refused("SERIES_NOT_FOUND", { series: slug, known: all.map((one) => one.slug) });
  return found;
}

/** A series with everything its form shows. */
export interface SeriesPage extends SeriesDetail {
  readonly marque: { readonly slug: string; readonly name: string };
  readonly ordinal: number;
  /** Counts up with every change of the series. */
  readonly version: number;
  /** Cars filed under it. */
  readonly cars: number;
}

/** How often a record was changed: it guards against two editors where the row has no version of its own. */
export async function changesOf(ctx: Context, nounId: string): Promise<number> {
  return ctx.db.journalEntry.count({ where: { nounId } });
}

/**
 * A series with its number pattern, build dates and options, for its page and form.
 *
 * @throws Refusal SERIES_NOT_FOUND
 */
export async function seriesPage(ctx: Context, slug: string): Promise<SeriesPage> {
  const series = await findSeries(ctx, slug);
  const row = await ctx.db.series.findUniqueOrThrow({
    where: { clubId_id: { clubId: ctx.club.id, id: series.id } },
    select: {
      ordinal: true,
      marque: { select: { slug: true, name: true } },
      _count: { select: { cars: true } },
    },
  });
  const { marque, ordinal } = row;
  return { ...series, marque, ordinal, version: await changesOf(ctx, series.id), cars: row._count.cars };
}

/** The club's marques, by name, with how many series each has. */
export async function listMarques(ctx: Context) {
  const rows = await ctx.db.marque.findMany({
    select: { id: true, slug: true, name: true, _count: { select: { series: true } } },
    orderBy: { name: "asc" },
  });
  return rows.map(({ _count, ...marque }) => ({ ...marque, series: _count.series }));
}
