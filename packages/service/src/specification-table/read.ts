import { inWalkingOrder, specificationTable } from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { findSeries } from "../series";
import { specificationOf } from "../specification";

const quoted = (cell: string) => (/[",;\t\n\r]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/**
 * One version of a specification as a CSV file (UTF-8 with its mark, commas) that reads back into a draft as the same.
 *
 * @throws Refusal SERIES_NOT_FOUND, SPECIFICATION_NOT_FOUND
 */
export async function specificationCsv(
  ctx: Context,
  reference: { readonly series: string; readonly version: number },
): Promise<{ readonly file: string; readonly text: string }> {
  const series = await findSeries(ctx, reference.series);
  const { entries, version } = await specificationOf(ctx, { series, version: reference.version });
  const book = await bookOf(ctx);
  const rows = await ctx.db.source.findMany({ select: { title: true, kind: true, edition: true } });
  const sources = rows.map(({ edition, ...source }) => ({
    ...source,
    ...(edition === null ? {} : { edition }),
  }));
  const table = specificationTable(inWalkingOrder(entries, book), book, sources);
  const lines = [table.headings, ...table.rows].map((cells) => cells.map(quoted).join(","));
  return { file: `${series.slug}-specification-${version}.csv`, text: `\uFEFF${lines.join("\r\n")}\r\n` };
}
