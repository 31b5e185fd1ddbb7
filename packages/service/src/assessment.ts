import {
  type CarEntries,
  type CharacteristicBook,
  type Deviation,
  deviationsFromFactory,
  entriesFor,
  entriesWhere,
  type Specification,
  type State,
  stateOn,
} from "@trunnion/register";
import type { Context } from "./context";
import type { CarRecord } from "./record";
import { currentSpecifications } from "./specification/read";

/** What a car is on a day, and how that compares with factory. */
export interface Assessment {
  readonly record: CarRecord;
  readonly state: State;
  /** Against factory, worst first. */
  readonly deviations: readonly Deviation[];
}

/** The engines run over one record: pure, so page, sheet and command line say the same. */
export function assess(
  record: CarRecord,
  specification: Specification | undefined,
  book: CharacteristicBook,
  day: string,
): Assessment {
  return assessBy(entriesFor(specification, record.basis, book), { record, book, day });
}

interface Assessed {
  readonly record: CarRecord;
  readonly book: CharacteristicBook;
  readonly day: string;
}

function assessBy(entries: CarEntries, { record, book, day }: Assessed): Assessment {
  const state = stateOn(day, { entries, ...record });
  return { record, state, deviations: deviationsFromFactory(state, entries, book) };
}

/**
 * The same of what is recorded of the car alone: entries of which the car has no value are passed over, most of a
 * specification and most of the work.
 */
function assessKnown(specification: Specification | undefined, assessed: Assessed): Assessment {
  const { record, book } = assessed;
  const known = new Set<string>();
  for (const { characteristic } of record.asBuilt) known.add(characteristic);
  for (const { changes } of record.modifications)
    for (const { characteristic } of changes) known.add(characteristic);
  for (const { characteristic } of record.readings) known.add(characteristic);
  const { basis } = record;
  return assessBy(
    entriesWhere({ specification, basis, book }, (key) => known.has(key)),
    assessed,
  );
}

/** Ids of the series that some records are of. */
export const seriesIdsOf = (records: readonly CarRecord[]): readonly string[] => [
  ...new Set(records.flatMap(({ series }) => (series === null ? [] : [series.id]))),
];

async function specificationsOf(ctx: Context, seriesIds: readonly string[]) {
  const specifications = await currentSpecifications(ctx, seriesIds);
  return ({ series }: CarRecord) => (series === null ? undefined : specifications.get(series.id));
}

/**
 * How cars of some series are assessed today, of what is recorded of them alone; what only their specification says is
 * left out.
 */
export async function knownAssessor(
  ctx: Context,
  seriesIds: readonly string[],
  book: CharacteristicBook,
): Promise<(record: CarRecord) => Assessment> {
  const specificationOf = await specificationsOf(ctx, seriesIds);
  return (record) => assessKnown(specificationOf(record), { record, book, day: ctx.today });
}

/** Assesses some cars on a day against their series' current specification. */
export async function assessAll(
  ctx: Context,
  records: readonly CarRecord[],
  book: CharacteristicBook,
  day: string,
): Promise<readonly Assessment[]> {
  const specificationOf = await specificationsOf(ctx, seriesIdsOf(records));
  return records.map((record) => assess(record, specificationOf(record), book, day));
}
