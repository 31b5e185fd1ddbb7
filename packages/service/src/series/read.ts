import { type NumberPattern, refused } from "@trunnion/register";
import type { Context } from "../context";

/** A series, for filters. */
export interface SeriesLine {
  readonly slug: string;
  readonly name: string;
}

/** The club's series, in order. */
export async function listSeries(ctx: Context): Promise<readonly SeriesLine[]> {
  return ctx.db.$queryRaw<SeriesLine[]>`SELECT slug, name FROM series ORDER BY ordinal`;
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
  const rows = await ctx.db.$queryRaw<(Omit<SeriesDetail, "builtCount"> & { builtCount: number | null })[]>`
    SELECT s.id::text AS id, s.slug, s.name,
      json_build_object('series', s.name, 'prefix', s.number_prefix, 'digits', s.number_digits, 'first', s.first_serial,
        'last', s.last_serial, 'suffixes', s.number_suffixes) AS pattern,
      to_char(s.built_from, 'YYYY-MM-DD') AS "builtFrom", to_char(s.built_to, 'YYYY-MM-DD') AS "builtTo",
      s.built_count AS "builtCount",
      coalesce((SELECT json_agg(json_build_object('code', o.code, 'label', o.label) ORDER BY o.code) FROM series_option o
        WHERE o.club_id = s.club_id AND o.series_id = s.id), '[]') AS options
    FROM series s ORDER BY s.ordinal`;
  return rows.map(({ builtCount, ...row }) => (builtCount === null ? row : { ...row, builtCount }));
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
