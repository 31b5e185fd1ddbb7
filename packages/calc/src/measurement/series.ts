import { CalcRefusal } from "../catalogue/refusal";
import { finite } from "../spring/guard";

/** Most readings one series may hold: beyond it, something else is meant. */
export const seriesLimit = 100_000;

/** What repeated readings of one thing say, in their own unit. */
export interface Repeatability {
  readonly count: number;
  readonly mean: number;
  /** Sample standard deviation, n − 1 form: the scatter of a single reading. */
  readonly standardDeviation: number;
  /** Standard uncertainty of the mean, s/√n (GUM 4.2.3). */
  readonly uncertaintyOfMean: number;
  /** n − 1. */
  readonly degreesOfFreedom: number;
  /** Largest less smallest. */
  readonly range: number;
  /** Two single readings by the same hand differ by less than this 95 times in 100: 1.96·√2·s (ISO 5725-6). */
  readonly repeatabilityLimit: number;
}

/**
 * Repeatability of a series of readings, taken under the same conditions.
 * @throws CalcRefusal with fewer than two readings, more than {@link seriesLimit}, or one that is not finite
 */
export function repeatability(readings: readonly number[]): Repeatability {
  const mean = meanOf(readings);
  const count = readings.length;
  if (count < 2)
    throw new CalcRefusal("TOO_FEW", "scatter needs at least two readings, but there is one", "readings");
  const standardDeviation = Math.sqrt(sumOf(readings.map((each) => (each - mean) ** 2)) / (count - 1));
  return {
    count,
    mean,
    standardDeviation,
    uncertaintyOfMean: standardDeviation / Math.sqrt(count),
    degreesOfFreedom: count - 1,
    range: readings.reduce(greater) - readings.reduce(lesser),
    repeatabilityLimit: 1.96 * Math.SQRT2 * standardDeviation,
  };
}

/**
 * Arithmetic mean.
 * @throws CalcRefusal for an empty series, one longer than {@link seriesLimit}, or a reading that is not finite
 */
export function meanOf(readings: readonly number[]): number {
  const checked = checkedSeries(readings);
  const rough = sumOf(checked) / checked.length;
  // A second pass takes off what the first lost to rounding, so that equal readings give exactly themselves.
  return rough + sumOf(checked.map((each) => each - rough)) / checked.length;
}

/** The series itself, checked: 1 to {@link seriesLimit} finite readings. */
export function checkedSeries(readings: readonly number[]): readonly number[] {
  if (readings.length === 0) throw new CalcRefusal("TOO_FEW", "the series has no reading", "readings");
  if (readings.length > seriesLimit)
    throw new CalcRefusal(
      "TOO_MANY",
      `a series may hold ${seriesLimit} readings, but has ${readings.length}`,
      "readings",
    );
  readings.forEach((each, index) => {
    finite(each, `readings.${index}`);
  });
  return readings;
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const greater = (a: number, b: number): number => Math.max(a, b);
const lesser = (a: number, b: number): number => Math.min(a, b);
