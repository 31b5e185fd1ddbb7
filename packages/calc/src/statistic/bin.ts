import { CalcRefusal } from "../catalogue/refusal";
import { finite, notNegative, positive, wholeNumber } from "../spring/guard";

/** What a histogram's classes are laid out by: figures a database gives without handing out every value. */
export interface BinsInput {
  /** How many values. */
  readonly count: number;
  readonly least: number;
  readonly most: number;
  /** Upper less lower quartile. */
  readonly interquartileRange: number;
  /** Step the values are read to: no class is narrower. 0 where it is not known. */
  readonly finest: number;
  /** Widths that read well, in the values' unit, rising; left out: 1, 2 and 5 times powers of ten. */
  readonly widths?: readonly number[];
}

/** Classes of one width, each from its lower edge (included) up to the next (not included). */
export interface Bins {
  readonly from: number;
  readonly width: number;
  readonly count: number;
  /** What the width follows from: Freedman and Diaconis, Sturges, or neither where all values are equal. */
  readonly rule: "freedmanDiaconis" | "sturges" | "single";
}

/** Most classes of one histogram: what one can still tell apart on a phone. */
export const binLimit = 40;

/** Shares of a step by which an edge is kept clear of rounding: a value that is the edge belongs above it. */
const EDGE = 1e-9;

/**
 * The smallest width that reads well and is not below the one given: of the list, or 1, 2 or 5 times a power of ten.
 *
 * @throws CalcRefusal unless the width is finite and above zero
 * @example niceStep(0.13) // => 0.2
 */
export function niceStep(width: number, widths: readonly number[] = []): number {
  positive(width, "width");
  const slack = width * (1 - EDGE);
  const listed = widths.find((one) => one >= slack);
  if (listed !== undefined) return listed;
  const power = 10 ** Math.floor(Math.log10(slack));
  const factor = [1, 2, 5, 10].find((one) => one * power >= slack) ?? 10;
  // Divided, not multiplied, below one: 3 * 0.1 is not 0.3.
  return power < 1 ? factor / Math.round(1 / power) : factor * power;
}

interface Width {
  readonly raw: number;
  readonly rule: Bins["rule"];
}

function rawWidth({ count, least, most, interquartileRange }: BinsInput): Width {
  if (most === least) return { raw: 0, rule: "single" };
  if (interquartileRange > 0)
    return { raw: (2 * interquartileRange) / Math.cbrt(count), rule: "freedmanDiaconis" };
  return { raw: (most - least) / Math.ceil(Math.log2(count) + 1), rule: "sturges" };
}

/**
 * Classes for a histogram. Width by Freedman and Diaconis, 2·IQR·n^(−1/3) ("On the histogram as a density estimator",
 * Zeitschrift für Wahrscheinlichkeitstheorie 57 (1981) 453-476); where half of the values are equal that is nothing,
 * and Sturges's ⌈log₂ n + 1⌉ classes take its place (Journal of the American Statistical Association 21 (1926) 65-66).
 * Rounded up to a width that reads well, with edges at its multiples; never finer than the values are read, and widened
 * where one wild value would ask for more than {@link binLimit} classes.
 *
 * @throws CalcRefusal for a figure that is not finite, no value at all, or a least above the most
 */
export function bins(input: BinsInput): Bins {
  const { count, least, most, finest, widths } = input;
  if (wholeNumber(count, "count") === 0) throw new CalcRefusal("TOO_FEW", "there is no value", "count");
  if (finite(least, "least") > finite(most, "most"))
    throw new CalcRefusal("INVERTED", `least is ${least}, above most, ${most}`, "least");
  notNegative(input.interquartileRange, "interquartileRange");
  notNegative(finest, "finest");
  const { raw, rule } = rawWidth(input);
  const fits = (most - least) / (binLimit - 1);
  const size = Math.max(Math.abs(least), Math.abs(most), 1) * EDGE;
  const width = niceStep(Math.max(raw, finest, fits, size), widths);
  const first = Math.floor(least / width + EDGE);
  const last = Math.floor(most / width + EDGE);
  return { from: first * width, width, count: last - first + 1, rule };
}
