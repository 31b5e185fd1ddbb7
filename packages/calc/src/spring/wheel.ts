import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity } from "../quantity/unit-table/unit";
import { ratesInSeries } from "./combine";
import { finite, notNegative, positive } from "./guard";

/** How a spring is carried to the wheel. */
export interface SpringMounting {
  /** Spring compression per rise of the wheel centre, ds/dz; usually below 1. */
  readonly motionRatio: number;
  /** Change of the motion ratio per rise of the wheel centre, d²s/dz², 1/m. Left out: 0. */
  readonly motionRatioChange?: number | undefined;
  /** Force in the spring at the position meant, N; counts only with a changing motion ratio. */
  readonly springForce?: number | undefined;
}

/**
 * Wheel rate, N/m: the derivative of the wheel's load from the spring with respect to the wheel's rise,
 * k·MR² + F·dMR/dz. The second term is there only with a changing motion ratio.
 *
 * @throws CalcRefusal (`SPRING_FORCE_NEEDED`) when the ratio changes but the spring's force is not given
 */
export function wheelRate(springRate: number, mounting: SpringMounting): number {
  const { motionRatio, motionRatioChange = 0, springForce } = mounting;
  const constant = positive(springRate, "springRate") * positive(motionRatio, "motionRatio") ** 2;
  if (finite(motionRatioChange, "motionRatioChange") === 0) return constant;
  if (springForce !== undefined)
    return constant + notNegative(springForce, "springForce") * motionRatioChange;
  throw new CalcRefusal(
    "SPRING_FORCE_NEEDED",
    "a changing motion ratio adds force × change to the wheel rate: give the spring's force too",
    "springForce",
  );
}

/** Spring rate that gives a wheel rate at a constant motion ratio, N/m: k_w/MR². */
export function springRateForWheelRate(wantedWheelRate: number, motionRatio: number): number {
  return positive(wantedWheelRate, "wheelRate") / positive(motionRatio, "motionRatio") ** 2;
}

/** Ride rate, N/m: wheel rate in series with the tyre; the wheel rate itself where the tyre's is not known. */
export function rideRate(wheelRateOfSpring: number, tyreRate?: number): number {
  positive(wheelRateOfSpring, "wheelRate");
  return tyreRate === undefined
    ? wheelRateOfSpring
    : ratesInSeries([wheelRateOfSpring, positive(tyreRate, "tyreRate")]);
}

/** Undamped natural frequency of a mass on a rate, Hz: √(k/m)/2π. */
export function naturalFrequency(rate: number, mass: number): number {
  return Math.sqrt(positive(rate, "rate") / positive(mass, "mass")) / (2 * Math.PI);
}

/** Rate that gives a mass a natural frequency, N/m: m(2πf)². */
export function rateForFrequency(frequency: number, mass: number): number {
  return positive(mass, "mass") * (2 * Math.PI * positive(frequency, "frequency")) ** 2;
}

/** Natural frequency, Hz, of a mass that its weight sets down by a static deflection, m: √(g/δ)/2π. */
export function frequencyOfDeflection(deflection: number): number {
  return Math.sqrt(standardGravity / positive(deflection, "deflection")) / (2 * Math.PI);
}

/** Static deflection, m, under the weight of a mass: m·g/k. The inverse of {@link frequencyOfDeflection}. */
export function staticDeflection(rate: number, mass: number): number {
  return (positive(mass, "mass") * standardGravity) / positive(rate, "rate");
}

/** Wheel-hop frequency, Hz: the unsprung mass between spring and tyre, √((k_w + k_t)/m_u)/2π. */
export function wheelHopFrequency({ wheelRate: spring, tyreRate, unsprungMass }: WheelHopInput): number {
  return naturalFrequency(
    positive(spring, "wheelRate") + positive(tyreRate, "tyreRate"),
    positive(unsprungMass, "unsprungMass"),
  );
}

/** What wheel hop depends on: N/m, N/m, kg. */
export interface WheelHopInput {
  readonly wheelRate: number;
  readonly tyreRate: number;
  readonly unsprungMass: number;
}
