import type { Assembly } from "../characteristic/characteristic";
import { sameValue } from "../value/same";
import type { Value } from "../value/value";
import { looksAlike, threadOf, threadsAlike } from "./look-alike";

/** A thread or length on a car, a part or in a submission, with where it is. */
export interface Fitting {
  /** What has it, in words: "front caliper of the van", "fastener: link to bracket". */
  readonly what: string;
  readonly assembly: Assembly;
  /** What it meets: fittings of one spot go into one another. Left out where nothing says what it meets. */
  readonly spot?: string;
  readonly value: Value;
}

/**
 * `mixed`: threads that meet and differ. `confusable`: within one assembly, of like size, one starting in the other.
 * `lengths`: meant for one spot, and a few millimetres apart.
 */
export type MixKind = "mixed" | "confusable" | "lengths";

export interface MixWarning {
  readonly kind: MixKind;
  readonly one: string;
  readonly other: string;
  readonly text: string;
}

/** Most fittings compared with each other. */
const FITTING_LIMIT = 200;

function warningOf(one: Fitting, other: Fitting): MixWarning | undefined {
  const meet = one.spot !== undefined && one.spot === other.spot;
  if (sameValue(one.value, other.value) || (!meet && one.assembly !== other.assembly)) return undefined;
  const [a, b] = [threadOf(one.value), threadOf(other.value)];
  const named = { one: one.what, other: other.what };
  const both = `${one.what} has ${one.value.entered}, ${other.what} ${other.value.entered}`;
  if (a && b) {
    if (a.canonical === b.canonical) return undefined;
    const alike = threadsAlike(a, b);
    if (meet) return { ...named, kind: "mixed", text: `${both}: ${alike ?? "they do not go together"}.` };
    return alike === undefined ? undefined : { ...named, kind: "confusable", text: `${both}: ${alike}.` };
  }
  const lengths = meet ? looksAlike(one.value, other.value) : undefined;
  return lengths === undefined ? undefined : { ...named, kind: "lengths", text: `${both}: ${lengths}.` };
}

/**
 * Warns of recorded combinations that mix thread systems, or lengths that look alike: what meets and differs, and what
 * within one assembly is easily put in the other's place. The same two values are told once.
 */
export function mixWarnings(fittings: readonly Fitting[]): readonly MixWarning[] {
  const looked = fittings.slice(0, FITTING_LIMIT);
  const told = new Set<string>();
  return looked.flatMap((one, place) =>
    looked.slice(place + 1).flatMap((other) => {
      const warning = warningOf(one, other);
      if (warning === undefined) return [];
      const key = [one, other].map(({ what, value }) => `${what} ${value.entered}`).sort();
      const once = `${warning.kind} ${key.join(" / ")}`;
      if (told.has(once)) return [];
      told.add(once);
      return [warning];
    }),
  );
}
