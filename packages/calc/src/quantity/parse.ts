import type { Dimension, MeasuredDimension } from "./dimension";
import { examplesOf } from "./explain";
import { NotationError } from "./notation-error";
import { readParts, smallestOf, sumOf, symbolOf } from "./part";
import { readSign } from "./sign";
import { tidy } from "./tidy";
import { stepToSi, unitNamed } from "./unit";

/** A quantity read from trade notation. */
export interface Quantity {
  readonly dimension: MeasuredDimension;
  readonly si: number;
  /** The step the entry implies, in SI: 1/16 in for `9/16 in`, 0.1 mm for `16.0 mm`, one minute for `0°12'`. */
  readonly resolution: number;
  /** Symbol of the unit as written; for compounds the list of them, e.g. "cwt qr", "°'". */
  readonly unit: string;
  /** The entry, to the letter. */
  readonly entered: string;
}

export interface ParseOptions {
  /** Unit of an entry that names none. Left out, such an entry is refused (ratios and counts aside). */
  readonly defaultUnit?: string;
}

/**
 * Reads a quantity in the notation the trade uses: decimals (a comma where it cannot mean thousands), fractions and
 * mixed numbers, degrees and minutes, compounds such as `15 cwt 2 qr`, a sign in front or as a word, and every unit
 * of {@link unitsOf}. In torque, pressure and rate lb and kg are read as lbf and kgf.
 *
 * @throws NotationError that quotes the entry, says what is wrong and what would have been understood
 * @throws RangeError for the dimension `text`, which has no units, or a default unit that is none of the dimension's
 * @example parseQuantity("9/16 in", "length").si // => 0.0142875
 */
export function parseQuantity(entered: string, dimension: Dimension, options: ParseOptions = {}): Quantity {
  if (dimension === "text") throw new RangeError("a text is no quantity");
  try {
    return { ...readQuantity(tidy(entered, examplesOf(dimension)), dimension, options), entered };
  } catch (error) {
    throw error instanceof NotationError ? error.about(entered, examplesOf(dimension)) : error;
  }
}

function readQuantity(text: string, dimension: MeasuredDimension, { defaultUnit }: ParseOptions) {
  const { sign, start, end } = readSign(text);
  const bareUnit = defaultUnit === undefined ? undefined : unitNamed(dimension, defaultUnit);
  const parts = readParts({ text: text.slice(0, end), at: start, dimension, sign, bareUnit });
  const si = sumOf(parts, sign);
  if (dimension === "temperature" && si < 0) {
    const problem = "nothing is colder than absolute zero";
    throw new NotationError({
      entered: text,
      code: "OUT_OF_RANGE",
      place: 0,
      problem,
      understood: ["-20 °C"],
    });
  }
  const { number, unit } = smallestOf(parts);
  return { dimension, si, resolution: stepToSi(number.step, unit), unit: symbolOf(parts) };
}
