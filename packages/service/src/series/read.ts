import type { Context } from "../context";

/** A series, for filters. */
export interface SeriesLine {
  readonly slug: string;
  readonly name: string;
}

/** The club's series, in order. */
export async function listSeries(ctx: Context): Promise<readonly SeriesLine[]> {
  return ctx.db.series.findMany({ select: { slug: true, name: true }, orderBy: { ordinal: "asc" } });
}
