import type { Characteristic } from "../characteristic/characteristic";
import type { CheckReading } from "../sheet/sheet-model";
import type { Criterion } from "./check";

type Find = (key: string) => Characteristic | undefined;

const whole = { key: "whole", side: "whole", label: "" } as const;
const corners = [
  { key: "front-left", axle: "front", side: "left", label: "FL" },
  { key: "front-right", axle: "front", side: "right", label: "FR" },
  { key: "rear-left", axle: "rear", side: "left", label: "RL" },
  { key: "rear-right", axle: "rear", side: "right", label: "RR" },
] as const;

/**
 * Where a check is read: once, on both sides, or at each wheel. `characteristic` is empty where the check names none
 * that is known: what is written there stands in the note. The rear axle's characteristic is named like the front one's.
 */
export function readingPlaces(criterion: Criterion, find: Find): readonly CheckReading[] {
  if (criterion.kind !== "measured" && criterion.kind !== "datedItem") return [];
  const known = (key: string | undefined) => (key === undefined ? undefined : find(key));
  const characteristic = known(criterion.characteristic);
  const key = characteristic?.key ?? "";
  if (criterion.kind === "measured" && criterion.perCorner === true)
    return corners.map(({ axle, ...corner }) => ({
      ...corner,
      characteristic: axle === "front" ? key : (known(key.replace("front", "rear"))?.key ?? ""),
    }));
  if (criterion.kind === "datedItem" && key === "") return [];
  if (!characteristic?.sided) return [{ ...whole, characteristic: key }];
  return [
    { key: "left", characteristic: key, side: "left", label: "L" },
    { key: "right", characteristic: key, side: "right", label: "R" },
  ];
}

/** A place in words, after what is measured there: "front left", "right"; empty for the whole. */
export const sayPlace = ({ key }: Pick<CheckReading, "key">): string =>
  key === "whole" ? "" : key.replace("-", " ");

/** A note with figures that no characteristic is named for, so that nothing written is lost. */
export function measuredNote(
  note: string,
  loose: readonly { readonly place: string; readonly entered: string }[],
): string {
  const words = loose.map(({ place, entered }) => (place === "" ? entered : `${place} ${entered}`));
  return [note, words.length === 0 ? "" : `Measured ${words.join(", ")}`]
    .filter((part) => part !== "")
    .join("\n");
}
