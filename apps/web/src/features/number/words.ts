import type { DecisionLine } from "@trunnion/api";
import { sayDay } from "@trunnion/register";

export const outcomeWords: Readonly<Record<DecisionLine["outcome"], string>> = {
  oneHolds: "One car holds it",
  allStand: "All bear it rightly",
  sameCar: "The records are of one car",
  undecided: "Not decided yet",
};

/** A decision in one line: "S2-0145 holds it, decided 25 Nov 2026 by Ragna Vík". */
export function sayDecision({ outcome, holder, by, on }: DecisionLine): string {
  const what = outcome === "oneHolds" && holder !== undefined ? `${holder} holds it` : outcomeWords[outcome];
  return `${what}: ${sayDay(on)}, ${by}`;
}
