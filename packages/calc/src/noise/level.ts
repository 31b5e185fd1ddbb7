import { CalcRefusal } from "../catalogue/refusal";
import { finite, positive, written } from "../spring/guard";

/**
 * How much lower a point source sounds further away in the open, dB: 20·log₁₀(to/from); negative nearer to it.
 * Holds in the far field without reflections; half a metre from an exhaust is not far field, so from there it is an
 * estimate.
 * @throws CalcRefusal unless both distances, m, are positive
 * @example distanceDrop(0.5, 2) // => 12.04
 */
export function distanceDrop(from: number, to: number): number {
  return 20 * Math.log10(positive(to, "to") / positive(from, "from"));
}

/** A level, dB, measured at one distance, m, and wanted at another. */
export interface DistanceInput {
  readonly level: number;
  readonly from: number;
  readonly to: number;
}

/** Level at another distance in the open, dB. @throws CalcRefusal as {@link distanceDrop} */
export function levelAtDistance({ level, from, to }: DistanceInput): number {
  return finite(level, "level") - distanceDrop(from, to);
}

/**
 * Level of several unlike (incoherent) sources together, dB: 10·log₁₀ Σ10^(L/10). Two alike are 3 dB louder than one.
 * @throws CalcRefusal without any level
 */
export function sumOfLevels(levels: readonly number[]): number {
  if (levels.length === 0)
    throw new CalcRefusal("NO_LEVEL", "at least one level is needed, but there is none", "levels");
  const highest = Math.max(...levels.map((level, index) => finite(level, `levels.${index}`)));
  // Relative to the highest, so that no power overflows.
  const rest = levels.reduce((sum, level) => sum + 10 ** ((level - highest) / 10), 0);
  return highest + 10 * Math.log10(rest);
}

/** Least difference, dB, at which a background may be taken off: below it the result is mostly guess (ISO 3746, from memory). */
export const leastBackgroundMargin = 3;
/** Difference, dB, that the rules ask for, at which the background adds less than half a decibel. */
export const wantedBackgroundMargin = 10;

/** How much a background that lies a margin, dB, below a reading adds to it: −10·log₁₀(1 − 10^(−margin/10)), dB. */
export function backgroundCorrection(margin: number): number {
  if (finite(margin, "margin") >= leastBackgroundMargin) return -10 * Math.log10(1 - 10 ** (-margin / 10));
  throw new CalcRefusal(
    "BACKGROUND_TOO_LOUD",
    `the reading must be at least ${leastBackgroundMargin} dB above the background to be corrected, but is ${written(margin, "soundLevel", "dB")}`,
    "background",
  );
}

/** Level of a source alone, dB, from a reading with a steady background, dB, in it. @throws CalcRefusal as {@link backgroundCorrection} */
export function levelWithoutBackground(reading: number, background: number): number {
  return finite(reading, "reading") - backgroundCorrection(reading - finite(background, "background"));
}
