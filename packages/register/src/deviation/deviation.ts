import type { Side } from "../characteristic/characteristic";
import type { Alternative, Limits, SpecificationEntry } from "../specification/specification";
import type { StateValue } from "../state/state";
import type { Value } from "../value/value";

/** Words, never booleans. Order: worst first, as lists show them. */
export const verdicts = [
  "outsideLimits",
  "missing",
  "added",
  "differentPart",
  "cannotTell",
  "acceptedSubstitute",
  "periodOption",
  "insideLimits",
  "asSpecified",
  "notRecorded",
] as const;
export type Verdict = (typeof verdicts)[number];

/** What a comparison that could be made may come to, worst first. */
export type ComparedVerdict = Exclude<Verdict, "notRecorded">;
export const comparedVerdicts: readonly ComparedVerdict[] = verdicts.filter((one) => one !== "notRecorded");

/** A characteristic of a car compared with a baseline. */
export interface Deviation {
  readonly characteristic: string;
  readonly side: Side;
  readonly baseline: "factory" | "asBuilt" | "rules";
  readonly verdict: Verdict;
  /** What the baseline wants. */
  readonly nominal?: Value;
  readonly limits?: Limits;
  /** What the car has; missing when not recorded. */
  readonly actual?: StateValue;
  /** Actual minus nominal, SI, for two quantities. */
  readonly difference?: number;
  /** Actual over nominal, for two quantities with a nominal other than zero. */
  readonly ratio?: number;
  readonly entry?: SpecificationEntry;
  /** The alternative the car has, where it has one: its role tells a service replacement from an accepted substitute. */
  readonly alternative?: Alternative;
}
