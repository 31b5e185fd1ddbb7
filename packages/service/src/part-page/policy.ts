import {
  type FeatureDifference,
  type Fitting,
  featureDifferences,
  mixWarnings,
  spotOf,
} from "@trunnion/register";
import type { ListedPart } from "../part";

/** What a part has and where, for holding against its neighbours. */
export function fittingsOf({ name, origin, assembly, features }: ListedPart): readonly Fitting[] {
  const what = origin === "" ? name : `${name} (${origin})`;
  return features.map((feature) => ({ what, assembly, spot: spotOf(feature), value: feature.value }));
}

/** Another part of the same place, with what differs. */
export interface StandIn {
  readonly part: ListedPart;
  readonly differences: readonly FeatureDifference[];
}

const samePlace = (one: ListedPart, other: ListedPart) =>
  one.assembly === other.assembly && one.place === other.place;

/** The other parts of its place, each with what differs from it. */
export function standInsFor(part: ListedPart, all: readonly ListedPart[]): readonly StandIn[] {
  return all
    .filter((other) => other.id !== part.id && samePlace(part, other))
    .map((other) => ({ part: other, differences: featureDifferences(part.features, other.features) }));
}

/** A part of another place that meets this one somewhere, where what meets does not go together. */
export interface Mismatch {
  readonly part: ListedPart;
  readonly warnings: readonly string[];
}

/** Parts of other places that meet this one with another thread, or a length that looks alike. */
export function mismatchesOf(part: ListedPart, all: readonly ListedPart[]): readonly Mismatch[] {
  return all.flatMap((other) => {
    if (other.id === part.id || samePlace(part, other)) return [];
    const warnings = mixWarnings([...fittingsOf(part), ...fittingsOf(other)])
      .filter(({ kind, one, other: second }) => kind !== "confusable" && one !== second)
      .map(({ text }) => text);
    return warnings.length === 0 ? [] : [{ part: other, warnings }];
  });
}
