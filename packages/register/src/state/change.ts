import type { Side } from "../characteristic/characteristic";
import { sameValue } from "../value/same";
import type { State, StateValue } from "./state";

/** One characteristic that is another on one day than on another day. */
export interface StateChange {
  readonly characteristic: string;
  readonly side: Side;
  /** Missing where it was not known then. */
  readonly before?: StateValue;
  readonly after?: StateValue;
}

function changeAt(before: StateValue | undefined, after: StateValue | undefined): StateChange | undefined {
  const place = after ?? before;
  if (place === undefined) return undefined;
  if (before && after && sameValue(before.value, after.value)) return undefined;
  const { characteristic, side } = place;
  return {
    characteristic,
    side,
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
  };
}

/**
 * What differs between two states of a car, in the order of the later one. A value that is known now and was not then
 * is told too: it was learnt, whether or not the car changed. That the same value is better known since is no change.
 */
export function changesBetween(before: State, after: State): readonly StateChange[] {
  const keys = [...new Set([...after.keys(), ...before.keys()])];
  return keys.flatMap((key) => changeAt(before.get(key), after.get(key)) ?? []);
}
