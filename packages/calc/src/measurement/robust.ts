import { positive } from "../spring/guard";
import { checkedSeries, meanOf } from "./series";

/**
 * Median; of an even number the mean of the middle two.
 * @throws CalcRefusal for an empty series or a reading that is not finite
 */
export function medianOf(readings: readonly number[]): number {
  const sorted = [...checkedSeries(readings)].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? Number.NaN;
  const lower = sorted.length % 2 === 1 ? upper : (sorted[middle - 1] ?? Number.NaN);
  return lower + (upper - lower) / 2;
}

/**
 * Median absolute deviation from the median, as it is (not scaled to a standard deviation).
 * @throws CalcRefusal as {@link medianOf}
 */
export function medianAbsoluteDeviation(readings: readonly number[]): number {
  const median = medianOf(readings);
  return medianOf(readings.map((each) => Math.abs(each - median)));
}

/** Where the values lie, how widely, and which stand apart. */
export interface RobustSummary {
  readonly median: number;
  readonly mad: number;
  /** Robust estimate of the standard deviation that the scores are measured in. */
  readonly scale: number;
  /**
   * What the scale is from: `mad` (1.4826 MAD); `meanDeviation` (1.2533 × mean deviation from the median), when more
   * than half of the values are equal; `none`, when all are.
   */
  readonly scaleFrom: "mad" | "meanDeviation" | "none";
  /** Per reading, in order: (x − median)/scale; 0 where there is no scale. */
  readonly scores: readonly number[];
  /** Indices of readings whose score exceeds the threshold either way, in order. */
  readonly outliers: readonly number[];
}

/** Scores beyond this are labelled as possible outliers (Iglewicz and Hoaglin, in NIST e-Handbook 1.3.5.17). */
export const outlierThreshold = 3.5;

/**
 * Outliers by median and MAD: modified score 0.6745·(x − median)/MAD beyond 3.5 (Iglewicz and Hoaglin; NIST/SEMATECH
 * e-Handbook 1.3.5.17). Where more than half of the values are equal the MAD is zero and says nothing; the mean
 * deviation from the median, scaled by √(π/2), takes its place.
 *
 * An outlier is a reading to look at, not one to delete.
 * @param threshold greater than zero
 * @throws CalcRefusal as {@link medianOf}
 */
export function robustSummary(
  readings: readonly number[],
  threshold: number = outlierThreshold,
): RobustSummary {
  positive(threshold, "threshold");
  const median = medianOf(readings);
  const deviations = readings.map((each) => Math.abs(each - median));
  const mad = medianOf(deviations);
  const { scale, scaleFrom } = robustScale(mad, meanOf(deviations));
  const scores = readings.map((each) => (scale === 0 ? 0 : (each - median) / scale));
  const outliers = scores.flatMap((score, index) => (Math.abs(score) > threshold ? [index] : []));
  return { median, mad, scale, scaleFrom, scores, outliers };
}

/**
 * The robust standard deviation that scores are measured in, from the two deviations: for whoever has them already, as a
 * database does. Sources as {@link robustSummary}.
 *
 * @param mad median absolute deviation from the median, not negative
 * @param meanDeviation mean absolute deviation from the median, not negative
 */
export function robustScale(mad: number, meanDeviation: number): Pick<RobustSummary, "scale" | "scaleFrom"> {
  if (mad > 0) return { scale: mad / normalQuartile, scaleFrom: "mad" };
  if (meanDeviation > 0) return { scale: Math.sqrt(Math.PI / 2) * meanDeviation, scaleFrom: "meanDeviation" };
  return { scale: 0, scaleFrom: "none" };
}

/** Upper quartile of the standard normal distribution: MAD of a normal distribution, in standard deviations. */
const normalQuartile = 0.6744897501960817;
