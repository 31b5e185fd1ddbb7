import {
  type CharacteristicBook,
  type Deviation,
  deviationsFromFactory,
  entriesFor,
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
  const entries = entriesFor(specification, record.basis, book);
  const state = stateOn(day, { entries, ...record });
  return { record, state, deviations: deviationsFromFactory(state, entries, book) };
}

/**
 * The same of what is recorded of the car alone. Of a characteristic nothing else decides than its own entries, so those
 * of which the car has no value are passed over: most of a specification, and most of the work.
 */
function assessKnown(
  record: CarRecord,
  specification: Specification | undefined,
  book: CharacteristicBook,
  day: string,
): Assessment {
  if (specification === undefined) return assess(record, specification, book, day);
  const changes = record.modifications.flatMap((modification) => modification.changes);
  const known = new Set(
    [...record.asBuilt, ...changes, ...record.readings].map(({ characteristic }) => characteristic),
  );
  const entries = specification.entries.filter(({ characteristic }) => known.has(characteristic));
  return assess(record, { ...specification, entries }, book, day);
}

async function specificationsOf(ctx: Context, records: readonly CarRecord[]) {
  const seriesIds = new Set(records.flatMap(({ series }) => (series === null ? [] : [series.id])));
  const specifications = await currentSpecifications(ctx, [...seriesIds]);
  return ({ series }: CarRecord) => (series === null ? undefined : specifications.get(series.id));
}

/** How some cars are assessed today, of what is recorded of them alone; what only their specification says is left out. */
export async function knownAssessor(
  ctx: Context,
  records: readonly CarRecord[],
  book: CharacteristicBook,
): Promise<(record: CarRecord) => Assessment> {
  const specificationOf = await specificationsOf(ctx, records);
  return (record) => assessKnown(record, specificationOf(record), book, ctx.today);
}

/** Assesses some cars on a day against their series' current specification. */
export async function assessAll(
  ctx: Context,
  records: readonly CarRecord[],
  book: CharacteristicBook,
  day: string,
): Promise<readonly Assessment[]> {
  const specificationOf = await specificationsOf(ctx, records);
  return records.map((record) => assess(record, specificationOf(record), book, day));
}
