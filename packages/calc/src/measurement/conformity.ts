import { finite, positive } from "../spring/guard";
import { checkedLimits, type Limits } from "./verdict";

/** A measured value, its standard uncertainty and the limits, all in one unit. */
export interface ConformityInput {
  readonly value: number;
  /** u, greater than zero. */
  readonly standardUncertainty: number;
  readonly limits: Limits;
}

/**
 * Probability that the true value lies within the limits, for a normal distribution about the measured one
 * (JCGM 106:2012, 7.2 to 7.4). Tells how near "cannot tell" is to either proof; the verdict itself is
 * ISO 14253-1's.
 * @throws CalcRefusal unless the numbers are finite, u > 0 and a limit is given
 */
export function conformityProbability({ value, standardUncertainty, limits }: ConformityInput): number {
  const u = positive(standardUncertainty, "standardUncertainty");
  const { lower, upper } = checkedLimits(limits);
  const score = (limit: number) => (limit - finite(value, "value")) / u;
  if (lower === undefined) return normalProbability(score(upper ?? Number.NaN));
  if (upper === undefined) return normalProbability(-score(lower));
  // Both scores on the side of the smaller tail, so that the difference keeps its digits.
  return score(lower) > 0
    ? normalProbability(-score(lower)) - normalProbability(-score(upper))
    : normalProbability(score(upper)) - normalProbability(score(lower));
}

/**
 * Standard normal distribution function Φ(z), to about 1e-15 absolute.
 * @throws CalcRefusal unless z is finite
 */
export function normalProbability(z: number): number {
  const size = Math.abs(finite(z, "z"));
  const density = Math.exp((-size * size) / 2) / Math.sqrt(2 * Math.PI);
  const tail = size < seriesBelow ? 0.5 - density * oddSeries(size) : density * fraction(size);
  return z < 0 ? tail : 1 - tail;
}

const seriesBelow = 3;

/** z + z³/3 + z⁵/(3·5) + … (Abramowitz and Stegun 26.2.11); 60 terms are ample below 3. */
function oddSeries(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 1; n <= 60; n++) {
    term *= (z * z) / (2 * n + 1);
    sum += term;
  }
  return sum;
}

/** 1/(z + 1/(z + 2/(z + 3/(z + …)))) (Abramowitz and Stegun 26.2.14), from the inside out. */
function fraction(z: number): number {
  let rest = z;
  for (let n = 100; n >= 1; n--) rest = z + n / rest;
  return 1 / rest;
}
