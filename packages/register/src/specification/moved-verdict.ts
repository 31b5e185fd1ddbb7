import type { Side } from "../characteristic/characteristic";
import type { Deviation, Verdict } from "../deviation/deviation";
import { stateKey } from "../state/key";

/** A characteristic of one car that another specification judges differently. */
export interface MovedVerdict {
  readonly characteristic: string;
  readonly side: Side;
  /** Missing where that specification does not speak of it. */
  readonly before?: Deviation;
  readonly after?: Deviation;
}

/** How often a verdict became another; missing where there was, or is, nothing to judge by. */
export interface VerdictMove {
  readonly before: Verdict | undefined;
  readonly after: Verdict | undefined;
  readonly count: number;
}

const byPlace = (deviations: readonly Deviation[]) =>
  new Map(deviations.map((one) => [stateKey(one.characteristic, one.side), one]));

/** Nothing is recorded of the car, or nothing is specified: either way nothing was judged. */
const isUnjudged = (deviation: Deviation | undefined) =>
  deviation === undefined || deviation.verdict === "notRecorded";

/**
 * What moves when one car is held against another specification: characteristics whose verdict is not the same, in the
 * order of the deviations before, then those that only the other one speaks of. What is not recorded of the car does
 * not move, whether a specification speaks of it or not.
 */
export function movedVerdicts(
  before: readonly Deviation[],
  after: readonly Deviation[],
): readonly MovedVerdict[] {
  const [was, is] = [byPlace(before), byPlace(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((key) => {
    const [one, other] = [was.get(key), is.get(key)];
    const place = one ?? other;
    if (place === undefined || one?.verdict === other?.verdict) return [];
    if (isUnjudged(one) && isUnjudged(other)) return [];
    return [
      {
        characteristic: place.characteristic,
        side: place.side,
        ...(one === undefined ? {} : { before: one }),
        ...(other === undefined ? {} : { after: other }),
      },
    ];
  });
}

/** Counts moves by what became what, the most frequent first. */
export function countMoves(moves: Iterable<Pick<MovedVerdict, "before" | "after">>): readonly VerdictMove[] {
  const counts = new Map<string, VerdictMove>();
  for (const { before, after } of moves) {
    const key = `${before?.verdict} ${after?.verdict}`;
    const count = (counts.get(key)?.count ?? 0) + 1;
    counts.set(key, { before: before?.verdict, after: after?.verdict, count });
  }
  return [...counts.values()].sort((one, other) => other.count - one.count);
}
