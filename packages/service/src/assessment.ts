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

/** Assesses some cars on a day against their series' current specification. */
export async function assessAll(
  ctx: Context,
  records: readonly CarRecord[],
  book: CharacteristicBook,
  day: string,
): Promise<readonly Assessment[]> {
  const seriesIds = new Set(records.flatMap(({ series }) => (series === null ? [] : [series.id])));
  const specifications = await currentSpecifications(ctx, [...seriesIds]);
  return records.map((record) => {
    const specification = record.series === null ? undefined : specifications.get(record.series.id);
    return assess(record, specification, book, day);
  });
}
