import { refused, type Specification } from "@trunnion/register";
import type { Context } from "../context";
import { specificationFields, specificationFrom } from "./policy";

/** The current specification of each series, by the series' id. A series without one is not in the map. */
export async function currentSpecifications(
  ctx: Context,
  seriesIds: readonly string[],
): Promise<ReadonlyMap<string, Specification>> {
  const rows = await ctx.db.specification.findMany({
    where: { seriesId: { in: [...seriesIds] }, status: "current" },
    select: { ...specificationFields, seriesId: true },
  });
  return new Map(rows.map(({ seriesId, ...row }) => [seriesId, specificationFrom(row)]));
}

/** The specification of a series that was the current one at an instant; nothing where there was none. */
export async function specificationAt(
  ctx: Context,
  seriesId: string,
  instant: Date,
): Promise<Specification | undefined> {
  const row = await ctx.db.specification.findFirst({
    where: {
      seriesId,
      status: { not: "draft" },
      AND: [
        // One written straight into the register was current from when it was recorded.
        { OR: [{ madeCurrentAt: { lte: instant } }, { madeCurrentAt: null, recordedAt: { lte: instant } }] },
        { OR: [{ supersededAt: null }, { supersededAt: { gt: instant } }] },
      ],
    },
    select: specificationFields,
    orderBy: { version: "desc" },
  });
  return row ? specificationFrom(row) : undefined;
}

/** A version of a series' specification, by its number; the current one when none is said. */
export interface VersionReference {
  readonly series: { readonly id: string; readonly slug: string };
  readonly version?: number;
}

/**
 * One version of a series' specification, whatever its status, with that status.
 *
 * @throws Refusal SPECIFICATION_NOT_FOUND
 */
export async function specificationOf(ctx: Context, { series, version }: VersionReference) {
  const row = await ctx.db.specification.findFirst({
    where: { seriesId: series.id, ...(version === undefined ? { status: "current" } : { version }) },
    select: { ...specificationFields, status: true, revision: true, copiedFromId: true },
  });
  if (!row) {
    throw refused("SPECIFICATION_NOT_FOUND", {
      series: series.slug,
      ...(version === undefined ? {} : { version }),
    });
  }
  const { status, revision, copiedFromId } = row;
  return { ...specificationFrom(row), status, revision, copiedFromId };
}
