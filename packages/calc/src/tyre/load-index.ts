import { CalcRefusal } from "../catalogue/refusal";

/** The first index of {@link capacities}. */
const first = 50;
/** Load per tyre in kg, index 50 to 119, ten to a line (ISO 4000-1, UN R30 Annex 4). */
const capacities = [
  [190, 195, 200, 206, 212, 218, 224, 230, 236, 243],
  [250, 257, 265, 272, 280, 290, 300, 307, 315, 325],
  [335, 345, 355, 365, 375, 387, 400, 412, 425, 437],
  [450, 462, 475, 487, 500, 515, 530, 545, 560, 580],
  [600, 615, 630, 650, 670, 690, 710, 730, 750, 775],
  [800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030],
  [1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360],
].flat();

/** Range of load indices that {@link loadOfIndex} knows. */
export const loadIndexRange = { lowest: first, highest: first + capacities.length - 1 } as const;

/**
 * Greatest mass on one tyre of a load index, kg, at the speed of its symbol and the pressure of the standard. A
 * table (ISO 4000-1, UN R30 Annex 4, read on two tyre pages that each misprint one value), not a formula: the series
 * 45 × 10^(index/80) is off by up to half a step.
 *
 * @throws CalcRefusal for an index that is not whole or outside 50 to 119
 * @example loadOfIndex(83) // => 487
 */
export function loadOfIndex(index: number): number {
  const capacity = Number.isInteger(index) ? capacities[index - first] : undefined;
  if (capacity !== undefined) return capacity;
  const { lowest, highest } = loadIndexRange;
  throw new CalcRefusal(
    "UNKNOWN_LOAD_INDEX",
    `load index ${index} is not in the table: ${lowest} to ${highest}`,
    "loadIndex",
  );
}
