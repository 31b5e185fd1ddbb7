import { CalcRefusal } from "../catalogue/refusal";
import { finite, notNegative } from "../spring/guard";

/** A zone of specification: one limit or two, both included, in the unit of the value. */
export interface Limits {
  readonly lower?: number | undefined;
  readonly upper?: number | undefined;
}

/** Proven inside, proven outside, or not proven either way. A word, never a boolean: unknown is never a pass. */
export type Verdict = "inside" | "outside" | "cannotTell";

/** All verdicts. */
export const verdicts = ["inside", "outside", "cannotTell"] as const satisfies readonly Verdict[];

/** A measured value, its expanded uncertainty (k = 2) and the limits, all in one unit. */
export interface VerdictInput {
  readonly value: number;
  /** U, not negative; 0 only where the value is not measured but defined. */
  readonly expandedUncertainty: number;
  readonly limits: Limits;
}

/**
 * Decision on conformity after ISO 14253-1: inside when L + U ≤ y ≤ H − U, outside when y < L − U or y > H + U, else
 * cannot tell. A zone with one limit has one guard. A zone narrower than 2U is never proven inside.
 *
 * Numbers that differ only by the rounding of a unit conversion (a few parts in 10¹⁵) count as equal, so that a
 * reading taken to be exactly on a guard is judged as such in every unit.
 *
 * @throws CalcRefusal when a number is not finite, the uncertainty negative, no limit given or the limits inverted:
 * there is never a verdict from NaN
 * @example verdict({ value: 5.8, expandedUncertainty: 1.5, limits: { lower: 5, upper: 15 } }) // => "cannotTell"
 */
export function verdict({ value, expandedUncertainty, limits }: VerdictInput): Verdict {
  finite(value, "value");
  const guard = notNegative(expandedUncertainty, "expandedUncertainty");
  const { lower, upper } = checkedLimits(limits);
  const equal = rounding * Math.max(Math.abs(value), guard, Math.abs(lower ?? 0), Math.abs(upper ?? 0));
  const above = lower === undefined ? Number.POSITIVE_INFINITY : value - lower;
  const below = upper === undefined ? Number.POSITIVE_INFINITY : upper - value;
  const margin = Math.min(above, below);
  if (margin < -guard - equal) return "outside";
  return margin >= guard - equal ? "inside" : "cannotTell";
}

/** Eight units in the last place: a value, two conversions and two sums. */
const rounding = 8 * Number.EPSILON;

/** The limits drawn in by the uncertainty: what a reading must show to be proven inside. */
export interface AcceptanceZone extends Limits {
  /** The uncertainty is wider than the zone: no reading can prove conformity. */
  readonly empty: boolean;
}

/**
 * The acceptance zone of ISO 14253-1, L + U to H − U.
 * @throws CalcRefusal as {@link verdict}
 * @example acceptanceZone({ lower: 5, upper: 15 }, 1.5) // => { lower: 6.5, upper: 13.5, empty: false }
 */
export function acceptanceZone(limits: Limits, expandedUncertainty: number): AcceptanceZone {
  const guard = notNegative(expandedUncertainty, "expandedUncertainty");
  const { lower, upper } = checkedLimits(limits);
  return {
    ...(lower === undefined ? {} : { lower: lower + guard }),
    ...(upper === undefined ? {} : { upper: upper - guard }),
    empty: lower !== undefined && upper !== undefined && lower + guard > upper - guard,
  };
}

/**
 * The limits themselves, checked.
 * @throws CalcRefusal (`NO_LIMITS`, `INVERTED_LIMITS`, `NOT_FINITE`)
 */
export function checkedLimits({ lower, upper }: Limits): Limits {
  if (lower !== undefined) finite(lower, "limits.lower");
  if (upper !== undefined) finite(upper, "limits.upper");
  if (lower === undefined && upper === undefined)
    throw new CalcRefusal(
      "NO_LIMITS",
      "a verdict needs a lower or an upper limit; neither is given",
      "limits",
    );
  if (lower !== undefined && upper !== undefined && lower > upper)
    throw new CalcRefusal(
      "INVERTED_LIMITS",
      `the lower limit must not lie above the upper one, but ${lower} > ${upper}`,
      "limits",
    );
  return { lower, upper };
}
