import { type JournalStep, rewind } from "./rewind";

/** A line of the journal about one of several rows of a car: its numbers, statuses, notes. */
export interface RowStep extends JournalStep {
  /** `identity.add`, `status.correct`, `note.remove`. */
  readonly action: string;
  readonly rowId: string;
}

export interface KeptRow<F> {
  readonly id: string;
  /** ISO instant in UTC. */
  readonly recordedAt: string;
  readonly fields: F;
}

export interface RewoundRow<F> {
  readonly id: string;
  readonly fields: F;
  readonly lost: readonly string[];
}

export interface RewindRowsInput<F> {
  /** The rows as they are now. */
  readonly rows: readonly KeptRow<F>[];
  /** The journal's lines about them, in the order they were written. */
  readonly steps: readonly RowStep[];
  /** ISO instant in UTC. */
  readonly instant: string;
  /** A row of which nothing is known, to fill up one that was taken away. */
  readonly blank: F;
}

const isRemoval = ({ action }: RowStep) => action.endsWith(".remove");
const isAddition = ({ action }: RowStep) => action.endsWith(".add");

/** Rows that were taken away since, and had been there at the instant. */
function removedSince<F extends object>({
  rows,
  steps,
  instant,
  blank,
}: RewindRowsInput<F>): readonly KeptRow<F>[] {
  const kept = new Set(rows.map(({ id }) => id));
  const later = steps.filter(({ at }) => at > instant);
  const addedLater = new Set(later.filter(isAddition).map(({ rowId }) => rowId));
  const gone = later.filter(
    (step) => isRemoval(step) && !kept.has(step.rowId) && !addedLater.has(step.rowId),
  );
  return gone.map(({ rowId }) => ({ id: rowId, recordedAt: "", fields: blank }));
}

/**
 * The rows as they were at an instant: those recorded by then, with later changes taken back, and those taken away since
 * from what the journal kept of them.
 */
export function rewindRows<F extends object>(input: RewindRowsInput<F>): readonly RewoundRow<F>[] {
  const { rows, steps, instant } = input;
  const there = rows.filter(({ recordedAt }) => recordedAt <= instant);
  return [...there, ...removedSince(input)].map(({ id, fields: now }) => {
    const own = steps.filter((step) => step.rowId === id && !isAddition(step));
    return { id, ...rewind({ now, steps: own, instant }) };
  });
}
