import { foldName } from "../characteristic/fold-name";
import { foldText } from "../condition/fold-text";
import { fulfils, sameValue, stepOf } from "../value/same";
import type { Value } from "../value/value";
import { looksAlike } from "./look-alike";
import type { PartFeature } from "./part";

/** What a feature is about: features of one spot are held against each other, on one part and on its neighbours. */
export function spotOf({ characteristic, kind, label }: PartFeature): string {
  return characteristic ?? `${kind}: ${foldName(label)}`;
}

/**
 * How far a recorded number may lie from a part's and still be it, SI: half the step the part's is written to. Nothing
 * for what is no quantity.
 */
export function tellingTolerance(value: Value): number | undefined {
  return value.kind === "quantity" ? (stepOf(value) / 2) * (1 - 1e-9) : undefined;
}

function isTold(recorded: Value, wanted: Value): boolean {
  if (recorded.kind === "quantity" && wanted.kind === "quantity")
    return Math.abs(recorded.si - wanted.si) <= (tellingTolerance(wanted) ?? 0);
  if (recorded.kind === "text" && wanted.kind === "text")
    return foldText(recorded.entered).includes(foldText(wanted.text));
  return fulfils(recorded, wanted);
}

export type Use = "yes" | "no" | "unknown";

/**
 * Whether a car has a part, by what its record says: yes where every telling feature is recorded with the part's value,
 * no where one is recorded with another, else unknown. Never yes for a part without a telling feature.
 *
 * @param recorded values of a characteristic on the car, one per side; empty where none is recorded
 */
export function carHasPart(
  features: readonly PartFeature[],
  recorded: (characteristic: string) => readonly Value[],
): Use {
  const telling = features.filter(({ tells }) => tells);
  if (telling.length === 0) return "unknown";
  const found = telling.map(({ characteristic = "", value }): Use => {
    const values = recorded(characteristic);
    if (values.length === 0) return "unknown";
    return values.some((one) => isTold(one, value)) ? "yes" : "no";
  });
  if (found.includes("no")) return "no";
  return found.includes("unknown") ? "unknown" : "yes";
}

/** A feature in which two parts of one place differ. */
export interface FeatureDifference {
  readonly label: string;
  /** Missing where nothing is said of it. */
  readonly here?: Value;
  readonly there?: Value;
  /** They differ and look the same: in words why that is dangerous. */
  readonly alike?: string;
}

/** What differs between two parts of one place, in the order of the first, then what only the other says. */
export function featureDifferences(
  here: readonly PartFeature[],
  there: readonly PartFeature[],
): readonly FeatureDifference[] {
  const others = new Map(there.map((feature) => [spotOf(feature), feature]));
  const own = new Set(here.map(spotOf));
  const differing = here.flatMap((feature): FeatureDifference[] => {
    const other = others.get(spotOf(feature));
    const { label, value } = feature;
    if (other === undefined) return [{ label, here: value }];
    if (sameValue(value, other.value)) return [];
    const alike = looksAlike(value, other.value, feature.kind === "thread");
    return [{ label, here: value, there: other.value, ...(alike === undefined ? {} : { alike }) }];
  });
  const rest = there
    .filter((feature) => !own.has(spotOf(feature)))
    .map(({ label, value }) => ({ label, there: value }));
  return [...differing, ...rest];
}
