import { coverageFactor, resolutionUncertainty, verdict } from "@trunnion/calc";
import type { Characteristic } from "../characteristic/characteristic";
import type { BracketModel } from "../sheet/sheet-model";
import type { Limits } from "../specification/specification";
import { parseValue } from "../value/parse";

/** What a reading comes to, at once. */
export type ReadingVerdict =
  | { readonly state: "unread"; readonly text: string }
  | {
      readonly state: "read";
      readonly text: string;
      readonly bracket?: BracketModel;
      readonly outside: boolean;
    };

const words = {
  inside: "inside limits",
  outside: "outside limits",
  cannotTell: "too near the limit to tell",
} as const;

/**
 * Judges a reading as typed against its limits (ISO 14253-1), with the uncertainty of what it was read with (expanded,
 * k = 2, SI) or, where that is not known, what its notation alone implies. What cannot be read says what would be.
 */
export function judgeReading(
  characteristic: Characteristic,
  entered: string,
  limits: Limits | undefined,
  ofInstrument?: number,
): ReadingVerdict {
  const parsed = parseValue(characteristic, entered);
  if (!parsed.ok) return { state: "unread", text: parsed.problem.message };
  const { value } = parsed;
  if (value.kind !== "quantity" || !limits) return { state: "read", text: "no limits known", outside: false };
  const expandedUncertainty = ofInstrument ?? coverageFactor * resolutionUncertainty(value.resolution);
  const told = verdict({ value: value.si, expandedUncertainty, limits });
  return {
    state: "read",
    text: words[told],
    outside: told === "outside",
    bracket: { ...limits, value: value.si, expandedUncertainty },
  };
}
