import type { Prisma } from "@trunnion/db";
import type { Applicability, Limits, Specification, SpecificationEntry } from "@trunnion/register";
import type { Context } from "../context";
import { dayOrNothing } from "../day";
import { sourceFields, sourceOf } from "../source-columns";
import { valueFrom } from "../value-columns";

const valueFields = { valueKind: true, entered: true, number: true, resolution: true, text: true } as const;

const entryFields = {
  id: true,
  characteristic: true,
  side: true,
  nominalValueKind: true,
  nominalEntered: true,
  nominalNumber: true,
  nominalResolution: true,
  nominalText: true,
  lower: true,
  upper: true,
  serialFrom: true,
  serialTo: true,
  builtFrom: true,
  builtTo: true,
  option: true,
  note: true,
  ...sourceFields,
  alternatives: {
    select: { role: true, note: true, ...valueFields, ...sourceFields },
    orderBy: { id: "asc" },
  },
} satisfies Prisma.SpecificationEntrySelect;

type EntryRow = Prisma.SpecificationEntryGetPayload<{ select: typeof entryFields }>;

/** Drops what is not there, so that an optional key is absent rather than undefined. */
function present<T extends object>(parts: T): { [K in keyof T]?: NonNullable<T[K]> } {
  const kept = Object.entries(parts).filter(([, part]) => part !== null && part !== undefined);
  return Object.fromEntries(kept) as { [K in keyof T]?: NonNullable<T[K]> };
}

function applicabilityOf(row: EntryRow): Applicability {
  return present({
    serialFrom: row.serialFrom,
    serialTo: row.serialTo,
    builtFrom: dayOrNothing(row.builtFrom),
    builtTo: dayOrNothing(row.builtTo),
    option: row.option,
  });
}

function nominalOf(row: EntryRow) {
  if (row.nominalValueKind === null || row.nominalEntered === null) return undefined;
  return valueFrom({
    valueKind: row.nominalValueKind,
    entered: row.nominalEntered,
    number: row.nominalNumber,
    resolution: row.nominalResolution,
    text: row.nominalText,
  });
}

function limitsOf(row: EntryRow): Limits | undefined {
  if (row.lower === null && row.upper === null) return undefined;
  return present({ lower: row.lower, upper: row.upper });
}

function entryOf(row: EntryRow): SpecificationEntry {
  return {
    id: row.id,
    characteristic: row.characteristic,
    side: row.side,
    alternatives: row.alternatives.map((alternative) => ({
      role: alternative.role,
      value: valueFrom(alternative),
      source: sourceOf(alternative),
      ...present({ note: alternative.note }),
    })),
    applicability: applicabilityOf(row),
    source: sourceOf(row),
    ...present({ nominal: nominalOf(row), limits: limitsOf(row), note: row.note }),
  };
}

/** The current specification of each series, by the series' id. A series without one is not in the map. */
export async function currentSpecifications(
  ctx: Context,
  seriesIds: readonly string[],
): Promise<ReadonlyMap<string, Specification>> {
  const rows = await ctx.db.specification.findMany({
    where: { seriesId: { in: [...seriesIds] }, status: "current" },
    select: {
      id: true,
      version: true,
      seriesId: true,
      entries: { select: entryFields, orderBy: { id: "asc" } },
    },
  });
  return new Map(
    rows.map(({ seriesId, id, version, entries }) => [
      seriesId,
      { id, version, entries: entries.map(entryOf) },
    ]),
  );
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
    select: { id: true, version: true, entries: { select: entryFields, orderBy: { id: "asc" } } },
    orderBy: { version: "desc" },
  });
  return row ? { id: row.id, version: row.version, entries: row.entries.map(entryOf) } : undefined;
}
