import type { CarEntries, CarEntry } from "../specification/entry";
import { type Trust, trusts } from "../specification/specification";
import { stateKey } from "./key";
import type { AcceptedModification, AsBuiltValue, Reading, State, StateValue } from "./state";
import { changed, read } from "./state-value";

/** What a car's state is folded from. */
export interface StateInput {
  readonly entries: CarEntries;
  readonly asBuilt: readonly AsBuiltValue[];
  readonly modifications: readonly AcceptedModification[];
  readonly readings: readonly Reading[];
}

interface Dated {
  readonly id: string;
  readonly on: string;
  readonly sequence: number;
}

const order = <T extends number | string>(a: T, b: T) => (a < b ? -1 : a > b ? 1 : 0);

/** By day, then by the order they were accepted in, then by id, so that the order of the list never matters. */
const inOrder = (a: Dated, b: Dated) => order(a.on, b.on) || a.sequence - b.sequence || order(a.id, b.id);

const rank = (trust: Trust) => trusts.indexOf(trust);
/** Least trusted first, so that the best trusted is set last and stands. */
const byTrust = (a: AsBuiltValue, b: AsBuiltValue) =>
  rank(b.source.trust) - rank(a.source.trust) || order(b.id, a.id);

const asSpecified = new WeakMap<CarEntry, StateValue>();

/** One entry speaks of hundreds of cars: what it says is made once. */
function specified(entry: CarEntry): StateValue | undefined {
  const known = asSpecified.get(entry);
  if (known) return known;
  const { id, characteristic, side, nominal, source } = entry;
  if (nominal === undefined) return undefined;
  const made = {
    characteristic,
    side,
    value: nominal,
    origin: "specification",
    originId: id,
    source,
  } as const;
  asSpecified.set(entry, made);
  return made;
}

function built({ id, characteristic, side, value, source }: AsBuiltValue): StateValue {
  return { characteristic, side, value, origin: "asBuilt", originId: id, source };
}

/**
 * What a car is on a day. In this order, each over the one before: the specification's nominals; what is known as
 * built (of two sources the better trusted); the accepted modifications up to and including the day, by day and
 * sequence; the latest reading of each characteristic, if it was not taken before the modification that last touched
 * that same characteristic. A reading of the day of the modification counts as taken after it.
 *
 * A modification speaks only of the characteristics it lists: a longer spring does not erase the ride height read
 * before it. That reading's age is on it, and the club's checks ask for a new one.
 *
 * Pure, and the order of the lists does not matter. What is not in the result is not known.
 * @param day ISO day; what came after it is passed over
 */
export function stateOn(day: string, { entries, asBuilt, modifications, readings }: StateInput): State {
  const until = <T extends Dated>(list: readonly T[]) => list.filter(({ on }) => on <= day).sort(inOrder);
  const state = new Map<string, StateValue>();
  const set = (value: StateValue) => state.set(stateKey(value.characteristic, value.side), value);
  for (const [key, entry] of entries) {
    const value = specified(entry);
    if (value) state.set(key, value);
  }
  for (const value of [...asBuilt].sort(byTrust)) set(built(value));
  for (const modification of until(modifications)) for (const value of changed(modification)) set(value);
  for (const reading of until(readings)) {
    const since = state.get(stateKey(reading.characteristic, reading.side))?.since;
    if (since === undefined || since <= reading.on) set(read(reading));
  }
  return state;
}
