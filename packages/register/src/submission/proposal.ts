import { type Consequence, consequencesOf, lackingFor } from "../consequence/index";
import type { State } from "../state/state";
import { type ReadSubmission, type SubmissionBasis, stateAfter, stateBefore } from "./read";

/** What a car was before a submission and is after it. */
export interface Proposal {
  /** ISO day both are of: when the last of it was fitted, else today. */
  readonly on: string;
  readonly before: State;
  readonly after: State;
}

/** The two states that a submission's modifications stand between; as far as it can be read. */
export function proposalOf({ modifications }: ReadSubmission, { today, stateOn }: SubmissionBasis): Proposal {
  const days = modifications.map(({ fitted }) => fitted?.latest ?? today);
  const on = days.length === 0 ? today : (days.sort().at(-1) ?? today);
  const changes = modifications.flatMap(({ changes: list }) => list);
  const before = stateBefore(stateOn(on), changes);
  return { on, before, after: stateAfter(before, changes) };
}

/** What a submission does to the car. */
export interface ProposedConsequences {
  /** ISO day. */
  readonly on: string;
  /** What moved, or cannot be worked out; what the change leaves alone is no news. */
  readonly consequences: readonly Consequence[];
  /** Characteristics whose recording would let something more be worked out, with what; most telling first. */
  readonly lacking: readonly {
    readonly characteristic: string;
    readonly label: string;
    readonly adds: readonly string[];
  }[];
}

/**
 * The consequences of a submission as far as it can be read: runs alike in the browser as it is typed, and on the server.
 */
export function consequencesOfSubmission(read: ReadSubmission, basis: SubmissionBasis): ProposedConsequences {
  const { on, before, after } = proposalOf(read, basis);
  const consequences = consequencesOf(before, after, basis.book).filter(
    ({ moved, missing, refused }) => moved || missing.length > 0 || refused !== undefined,
  );
  const touched = new Set(consequences.flatMap(({ missing }) => missing.map((one) => one.characteristic)));
  const lacking = [...lackingFor(after, basis.book)]
    .filter(([characteristic]) => touched.has(characteristic))
    .map(([characteristic, adds]) => ({
      characteristic,
      label: basis.book.find(characteristic)?.label ?? characteristic,
      adds,
    }));
  return {
    on,
    consequences,
    lacking: lacking.sort((a, b) => b.adds.length - a.adds.length || a.label.localeCompare(b.label, "en")),
  };
}
