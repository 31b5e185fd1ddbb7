/** One line of the journal about a record whose fields are changed in place. */
export interface JournalStep {
  /** ISO instant in UTC. */
  readonly at: string;
  /** Fields before; missing where the record was made by this step. */
  readonly before?: Readonly<Record<string, unknown>>;
  /** Fields after; missing where it was taken away. */
  readonly after?: Readonly<Record<string, unknown>>;
}

export interface Rewound<F> {
  readonly fields: F;
  /** Fields that were changed since, of which the journal does not keep what was there before. */
  readonly lost: readonly (keyof F & string)[];
}

export interface RewindInput<F> {
  /** The fields as they are now. */
  readonly now: F;
  /** The journal's lines about the record, in the order they were written. */
  readonly steps: readonly JournalStep[];
  /** ISO instant in UTC. */
  readonly instant: string;
  /** Fields that hold lists, of which a step may tell under `after` only what it added. */
  readonly growing?: readonly (keyof F & string)[];
}

/** What the journal says in place of words that may name somebody. */
const withheld = "not told here";

function without(list: unknown, added: unknown): unknown {
  return Array.isArray(list) && Array.isArray(added) ? list.filter((one) => !added.includes(one)) : list;
}

/**
 * The fields of a record as they were at an instant: the journal's changes since are taken back, the last one first.
 * A field that a change names without telling what was there before is `lost`, until an earlier change tells it.
 * Steps that made the record are left alone: whether it was there at all its own time of recording tells.
 */
export function rewind<F extends object>({ now, steps, instant, growing = [] }: RewindInput<F>): Rewound<F> {
  const fields: Record<string, unknown> = Object.fromEntries(Object.entries(now));
  const lost = new Set<string>();
  for (const { before, after = {} } of steps.filter(({ at }) => at > instant).toReversed()) {
    if (before === undefined) continue;
    for (const name of Object.keys(now)) {
      if (name in before && before[name] !== withheld) {
        fields[name] = before[name];
        lost.delete(name);
      } else if (growing.includes(name as keyof F & string)) {
        fields[name] = without(fields[name], after[name]);
      } else if (name in after || name in before) lost.add(name);
    }
  }
  return { fields: fields as F, lost: [...lost] as (keyof F & string)[] };
}
