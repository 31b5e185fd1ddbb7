import type { Prisma } from "@trunnion/db";
import {
  type Alternative,
  type Applicability,
  type Limits,
  noSourceTitle,
  type Specification,
  type SpecificationEntry,
} from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { dayColumn, dayOrNothing } from "../day";
import { sourceFields, sourceOf } from "../source-columns";
import { prefixedValueColumns, valueColumns, valueFrom } from "../value-columns";

const valueFields = { valueKind: true, entered: true, number: true, resolution: true, text: true } as const;

/** What a select needs so that `entryOf` can read the row. */
export const entryFields = {
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

/** An entry as the engines have it. */
export function entryOf(row: EntryRow): SpecificationEntry {
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

/** Ids of sources by title; what has no source is not in it. */
export type SourceIds = ReadonlyMap<string, string>;

function sourceIdOf(title: string, sources: SourceIds): string | null {
  if (title === noSourceTitle) return null;
  const id = sources.get(title);
  if (id === undefined) throw new Error(`the source "${title}" was not written before its entry`);
  return id;
}

/** Columns of an entry, apart from the version it belongs to. */
export function entryColumns(entry: SpecificationEntry, sources: SourceIds) {
  const { serialFrom, serialTo, builtFrom, builtTo, option } = entry.applicability;
  const none = { nominalValueKind: null, nominalEntered: null, nominalNumber: null, nominalResolution: null };
  return {
    characteristic: entry.characteristic,
    side: entry.side,
    ...(entry.nominal === undefined
      ? { ...none, nominalText: null }
      : prefixedValueColumns("nominal", entry.nominal)),
    lower: entry.limits?.lower ?? null,
    upper: entry.limits?.upper ?? null,
    serialFrom: serialFrom ?? null,
    serialTo: serialTo ?? null,
    builtFrom: builtFrom === undefined ? null : dayColumn(builtFrom),
    builtTo: builtTo === undefined ? null : dayColumn(builtTo),
    option: option ?? null,
    sourceId: sourceIdOf(entry.source.title, sources),
    locus: entry.source.locus ?? null,
    trust: entry.source.trust,
    note: entry.note ?? null,
  };
}

/** Row of an alternative. Ids rise, so that alternatives are read back in their order. */
export function alternativeRow(
  { role, value, note, source }: Alternative,
  entryId: string,
  sources: SourceIds,
) {
  return {
    id: uuid(),
    entryId,
    role,
    ...valueColumns(value),
    sourceId: sourceIdOf(source.title, sources),
    locus: source.locus ?? null,
    trust: source.trust,
    note: note ?? null,
  };
}

/** What a select needs so that `specificationFrom` can read the row. */
export const specificationFields = {
  id: true,
  version: true,
  entries: { select: entryFields, orderBy: { id: "asc" } },
} satisfies Prisma.SpecificationSelect;

/** A version as the engines have it. */
export function specificationFrom({
  id,
  version,
  entries,
}: Prisma.SpecificationGetPayload<{ select: typeof specificationFields }>): Specification {
  return { id, version, entries: entries.map(entryOf) };
}
