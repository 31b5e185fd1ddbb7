import type { CarEntries } from "../specification/entry";
import { stateKey } from "./key";
import type { AcceptedModification, AsBuiltValue, Reading, State, StateValue } from "./state";

/** What a car's state is folded from. */
export interface StateInput {
  readonly entries: CarEntries;
  readonly asBuilt: readonly AsBuiltValue[];
  readonly modifications: readonly AcceptedModification[];
  readonly readings: readonly Reading[];
}

interface Dated {
  readonly on: string;
  readonly sequence: number;
}

const inOrder = (a: Dated, b: Dated) => a.on.localeCompare(b.on) || a.sequence - b.sequence;

function specified(entries: CarEntries): [string, StateValue][] {
  return [...entries].flatMap(([key, { id, characteristic, side, nominal, source }]) =>
    nominal === undefined
      ? []
      : [
          [
            key,
            { characteristic, side, value: nominal, origin: "specification", originId: id, source },
          ] as const,
        ],
  ) as [string, StateValue][];
}

function built({ id, characteristic, side, value, source }: AsBuiltValue): [string, StateValue] {
  return [
    stateKey(characteristic, side),
    { characteristic, side, value, origin: "asBuilt", originId: id, source },
  ];
}

function changed({ id, on, changes, source }: AcceptedModification): [string, StateValue][] {
  return changes.map(({ characteristic, side, after }) => [
    stateKey(characteristic, side),
    { characteristic, side, value: after, origin: "modification", originId: id, since: on, source },
  ]);
}

function read(reading: Reading): [string, StateValue] {
  const { id, characteristic, side, value, on, source, expandedUncertainty } = reading;
  const told: StateValue = {
    characteristic,
    side,
    value,
    origin: "reading",
    originId: id,
    since: on,
    source,
  };
  const known = expandedUncertainty === undefined ? told : { ...told, expandedUncertainty };
  return [stateKey(characteristic, side), known];
}

/**
 * What a car is on a day: the specification's nominals, over them what is known as built, over that the accepted
 * modifications up to and including the day in order of (day, sequence), and the latest reading of each
 * characteristic where it was taken on or after the modification that last touched it. Readings of one day count in
 * order of sequence, and repeats on one sheet in the order given: the last stands.
 *
 * Pure: the order the lists come in does not matter beyond that. What is not in the result is not known.
 */
export function stateOn(day: string, { entries, asBuilt, modifications, readings }: StateInput): State {
  const state = new Map<string, StateValue>([...specified(entries), ...asBuilt.map(built)]);
  const until = <T extends Dated>(list: readonly T[]) => list.filter(({ on }) => on <= day).sort(inOrder);
  for (const modification of until(modifications)) {
    for (const [key, value] of changed(modification)) state.set(key, value);
  }
  for (const reading of until(readings)) {
    const [key, value] = read(reading);
    const before = state.get(key);
    if (before?.since === undefined || before.since <= reading.on) state.set(key, value);
  }
  return state;
}
