import { CalcRefusal } from "../catalogue/refusal";
import { finite, notNegative, positive } from "../spring/guard";

/** The coverage factor of every expanded uncertainty here: about 95 % of a normal distribution. */
export const coverageFactor = 2;

/**
 * Standard uncertainty of a value known only to lie within ±halfWidth, every place alike: a/√3 (GUM 4.3.7). Fits a
 * maker's accuracy of ±a given without a level of confidence.
 * @throws CalcRefusal below zero
 */
export function rectangularUncertainty(halfWidth: number): number {
  return notNegative(halfWidth, "halfWidth") / Math.sqrt(3);
}

/**
 * Standard uncertainty of a value within ±halfWidth, likelier in the middle: a/√6 (GUM 4.3.9).
 * @throws CalcRefusal below zero
 */
export function triangularUncertainty(halfWidth: number): number {
  return notNegative(halfWidth, "halfWidth") / Math.sqrt(6);
}

/**
 * Standard uncertainty of a value that swings between ±halfWidth in sine: a/√2 (GUM H.1.3.4).
 * @throws CalcRefusal below zero
 */
export function arcsineUncertainty(halfWidth: number): number {
  return notNegative(halfWidth, "halfWidth") / Math.SQRT2;
}

/**
 * Standard uncertainty from an instrument's resolution, step/√12: a rectangle half a step either way (GUM F.2.2.1).
 * `step` is the smallest step the instrument shows or is read to.
 * @throws CalcRefusal below zero
 */
export function resolutionUncertainty(step: number): number {
  return notNegative(step, "step") / Math.sqrt(12);
}

/**
 * Standard uncertainty from a calibration certificate's expanded one, U/k.
 * @throws CalcRefusal unless U ≥ 0 and k > 0
 */
export function certificateUncertainty(expanded: number, factor: number = coverageFactor): number {
  return notNegative(expanded, "expanded") / positive(factor, "factor");
}

/** One contribution to a combined uncertainty. */
export interface Contribution {
  /** u_i, in its own unit; not negative. */
  readonly standard: number;
  /** c_i, result per input; 1 when left out. */
  readonly sensitivity?: number | undefined;
  /** ν_i; left out or infinite for one taken from a data sheet (type B). */
  readonly degreesOfFreedom?: number | undefined;
}

/**
 * Combined standard uncertainty of uncorrelated contributions, √Σ(c_i·u_i)² (GUM 5.1.2, eq. 10).
 * @throws CalcRefusal when there is no contribution, or one is not a finite number
 * @example combinedUncertainty([{ standard: 3 }, { standard: 2, sensitivity: 2 }]) // => 5
 */
export function combinedUncertainty(contributions: readonly Contribution[]): number {
  if (contributions.length === 0)
    throw new CalcRefusal(
      "NO_CONTRIBUTION",
      "an uncertainty needs at least one contribution",
      "contributions",
    );
  return Math.hypot(...contributions.map(weight));
}

/** Expanded uncertainty, k = {@link coverageFactor} times the combined standard one. */
export function expandedUncertainty(contributions: readonly Contribution[]): number {
  return coverageFactor * combinedUncertainty(contributions);
}

/**
 * Effective degrees of freedom, u_c⁴ / Σ(u_i⁴/ν_i) (Welch and Satterthwaite, GUM G.4.1); infinite when every
 * contribution is, or when all are zero. Below about ten, k = 2 covers noticeably less than 95 %.
 * @throws CalcRefusal as {@link combinedUncertainty}, or unless every ν > 0
 */
export function effectiveDegreesOfFreedom(contributions: readonly Contribution[]): number {
  const combined = combinedUncertainty(contributions);
  if (combined === 0) return Number.POSITIVE_INFINITY;
  const terms = contributions.map((each, index) => {
    const { degreesOfFreedom = Number.POSITIVE_INFINITY } = each;
    if (degreesOfFreedom === Number.POSITIVE_INFINITY) return 0;
    return (
      (weight(each, index) / combined) ** 4 /
      positive(degreesOfFreedom, `contributions.${index}.degreesOfFreedom`)
    );
  });
  return 1 / terms.reduce((sum, term) => sum + term, 0);
}

function weight({ standard, sensitivity = 1 }: Contribution, index: number): number {
  const place = `contributions.${index}`;
  return Math.abs(finite(sensitivity, `${place}.sensitivity`)) * notNegative(standard, `${place}.standard`);
}
