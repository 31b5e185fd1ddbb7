import type { AcceptedModification, Reading, StateValue } from "./state";

/** What a modification set, as values of the car. */
export function changed({ id, on, said, changes, source }: AcceptedModification): readonly StateValue[] {
  return changes.map(({ characteristic, side, after }) => ({
    characteristic,
    side,
    value: after,
    origin: "modification",
    originId: id,
    since: on,
    ...(said === undefined ? {} : { sinceSaid: said }),
    source,
  }));
}

/** What a reading says, as a value of the car. */
export function read({
  id,
  characteristic,
  side,
  value,
  on,
  source,
  expandedUncertainty,
}: Reading): StateValue {
  return {
    characteristic,
    side,
    value,
    origin: "reading",
    originId: id,
    since: on,
    source,
    ...(expandedUncertainty === undefined ? {} : { expandedUncertainty }),
  };
}
