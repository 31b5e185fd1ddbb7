import { type CarEntry, entriesFor, type Specification, type StateInput } from "@trunnion/register";
import type { SubmissionGround } from "../submission";

/** What is fitted and set by the specification, without what the state does not follow from. */
function lean({ id, characteristic, side, nominal, source }: CarEntry): CarEntry {
  const bare = { id, characteristic, side, source, applicability: {}, alternatives: [] };
  return nominal === undefined ? bare : { ...bare, nominal };
}

/** What a car's state on any day is folded from, for the browser: no more than the fold reads. */
export function foldOf(
  { record, basis }: SubmissionGround,
  specification: Specification | undefined,
): StateInput {
  const entries = entriesFor(specification, record.basis, basis.book);
  return {
    entries: new Map(
      [...entries]
        .filter(([, { nominal }]) => nominal !== undefined)
        .map(([key, entry]) => [key, lean(entry)]),
    ),
    asBuilt: record.asBuilt.map(({ id, characteristic, side, value, source }) => ({
      id,
      characteristic,
      side,
      value,
      source,
    })),
    modifications: record.modifications.map(({ donor: _donor, fitted: _fitted, ...one }) => one),
    readings: record.readings,
  };
}
