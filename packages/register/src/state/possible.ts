import { shiftDays } from "../identity/calendar";
import { sameValue } from "../value/same";
import { type StateInput, stateOn } from "./fold";
import { stateKey } from "./key";
import type { StateValue } from "./state";
import { changed, read } from "./state-value";

/** One time that a characteristic was set or seen: between two days, both included. */
interface Occasion {
  readonly earliest: string;
  readonly latest: string;
  /** Order among occasions of one day, as the fold has it: modifications, then readings, each in order of acceptance. */
  readonly place: readonly [kind: 0 | 1, sequence: number, id: string];
  readonly value: StateValue;
}

function occasionsOf({ modifications, readings }: StateInput): ReadonlyMap<string, readonly Occasion[]> {
  const occasions = new Map<string, Occasion[]>();
  const add = (occasion: Occasion) => {
    const key = stateKey(occasion.value.characteristic, occasion.value.side);
    const list = occasions.get(key) ?? [];
    list.push(occasion);
    occasions.set(key, list);
  };
  for (const modification of modifications) {
    const { id, on, earliest = on, sequence } = modification;
    for (const value of changed(modification)) {
      add({ earliest, latest: on, place: [0, sequence, id], value });
    }
  }
  for (const reading of readings) {
    const { id, on, sequence } = reading;
    add({ earliest: on, latest: on, place: [1, sequence, id], value: read(reading) });
  }
  return occasions;
}

function follows(one: Occasion["place"], other: Occasion["place"]): boolean {
  for (const [index, part] of one.entries()) {
    const against = other[index];
    if (against !== undefined && part !== against) return part > against;
  }
  return false;
}

/** Whether, on any choice of days, `later` came after `one` and not after the day. */
function surelyAfter(later: Occasion, one: Occasion, day: string): boolean {
  if (later.latest > day) return false;
  const last = one.latest < day ? one.latest : day;
  return later.earliest > last || (later.earliest === last && follows(later.place, one.place));
}

/** The occasions that may have been the last one up to the day. */
function lastOnes(occasions: readonly Occasion[], day: string): readonly Occasion[] {
  return occasions.filter(
    (one) => one.earliest <= day && !occasions.some((other) => other !== one && surelyAfter(other, one, day)),
  );
}

function distinct(values: readonly StateValue[]): readonly StateValue[] {
  return values.filter(
    (value, index) => !values.slice(0, index).some((earlier) => sameValue(earlier.value, value.value)),
  );
}

/**
 * Where the dates do not tell what a car had on a day: by characteristic and side (`stateKey`), every other value it
 * may have had. A bar fitted in "1998" may or may not have been there on 1 June of that year; of two modifications
 * whose dates overlap either may have been the last. `stateOn` takes each at the latest day its date allows; this says
 * what that leaves open, in the order of the dates. Where nothing stands, that nothing was known stays possible too. Empty
 * where every date is a day.
 *
 * @param day ISO day
 */
export function doubtsOn(day: string, input: StateInput): ReadonlyMap<string, readonly StateValue[]> {
  const standing = stateOn(day, input);
  const before = stateOn(day, { ...input, modifications: [], readings: [] });
  const doubts = new Map<string, readonly StateValue[]>();
  for (const [key, occasions] of occasionsOf(input)) {
    const untouched = occasions.every(({ latest }) => latest > day);
    const base = untouched ? before.get(key) : undefined;
    const last = lastOnes(occasions, day).map(({ value }) => value);
    const possible = [...(base === undefined ? [] : [base]), ...last];
    const stands = standing.get(key);
    const values = distinct(possible).filter(
      ({ value }) => stands === undefined || !sameValue(value, stands.value),
    );
    if (values.length > 0) doubts.set(key, values);
  }
  return doubts;
}

/**
 * The days on which a car's state, or what is open about it, may be another than the day before; in order. From one of
 * them to the eve of the next, `stateOn` and `doubtsOn` give the same for every day.
 */
export function turningDays({
  modifications,
  readings,
}: Pick<StateInput, "modifications" | "readings">): readonly string[] {
  const starts = modifications.flatMap(({ earliest, on }) =>
    earliest === undefined || earliest === on ? [] : [earliest],
  );
  const days = [...modifications, ...readings].map(({ on }) => on);
  // What is open may follow what is known of a day only from the day after it.
  const after = starts.length === 0 ? [] : days.map((day) => shiftDays(day, 1));
  return [...new Set([...days, ...starts, ...after])].sort();
}
