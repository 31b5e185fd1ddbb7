import { refused, type Specification } from "@trunnion/register";
import type { Context } from "../context";
import { specificationFields, specificationFrom } from "./policy";

/** Specifications that were current, held ready: a version in force never changes, and every car's page needs one. */
const settled = new Map<string, Specification>();
/** Most held at once; the one longest unused gives way. */
const SETTLED = 100;

interface Stamp {
  readonly id: string;
  readonly revision: number;
  readonly madeCurrentAt: Date | null;
}

/**
 * What one state of a version is told by. A draft counts each change, and is put into force at an instant: so what was
 * read in a transaction that was then taken back is never taken for what the draft became later.
 */
const stampOf = ({ id, revision, madeCurrentAt }: Stamp) =>
  `${id} ${revision} ${madeCurrentAt?.getTime() ?? ""}`;

function settle(stamp: string, specification: Specification): void {
  settled.delete(stamp);
  settled.set(stamp, specification);
  for (const oldest of settled.keys()) {
    if (settled.size <= SETTLED) return;
    settled.delete(oldest);
  }
}

/** The current specification of each series, by the series' id. A series without one is not in the map. */
export async function currentSpecifications(
  { db }: Context,
  seriesIds: readonly string[],
): Promise<ReadonlyMap<string, Specification>> {
  if (seriesIds.length === 0) return new Map();
  const current = await db.$queryRaw<(Stamp & { readonly seriesId: string })[]>`
    SELECT id::text AS id, series_id::text AS "seriesId", revision, made_current_at AS "madeCurrentAt"
    FROM specification WHERE series_id = ANY(${[...seriesIds]}::uuid[]) AND status = 'current'`;
  const lacking = current.filter((row) => !settled.has(stampOf(row))).map(({ id }) => id);
  const read =
    lacking.length === 0
      ? []
      : await db.specification.findMany({ where: { id: { in: lacking } }, select: specificationFields });
  const fresh = new Map(read.map((row) => [row.id, specificationFrom(row)]));
  const found = new Map<string, Specification>();
  for (const row of current) {
    const specification = fresh.get(row.id) ?? settled.get(stampOf(row));
    if (specification === undefined) throw new Error(`specification ${row.id} went while it was read`);
    settle(stampOf(row), specification);
    found.set(row.seriesId, specification);
  }
  return found;
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
