import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive, written } from "../spring/guard";

/** One disc brake. */
export interface DiscBrake {
  /** Pistons of ONE side of the disc, m²; a sliding caliper has pistons on one side only. */
  readonly pistonArea: number;
  /** Pad on disc. */
  readonly friction: number;
  /** Wheel centre to where the friction acts, m. */
  readonly effectiveRadius: number;
  /** Line pressure below which the pads only come into contact, Pa; 0 when left out. */
  readonly thresholdPressure?: number | undefined;
}

/**
 * Torque of one disc, N·m: 2·μ·(p − p₀)·A·r, both faces, A the pistons of one side. An opposed caliper quoted with
 * the area of both sides gives twice the torque if it is doubled again.
 * @throws CalcRefusal when a number is not finite or not physical
 */
export function discTorque(pressure: number, brake: DiscBrake): number {
  return discTorquePerPressure(brake) * workingPressure(pressure, brake.thresholdPressure);
}

/** Torque of one disc per line pressure beyond the threshold, N·m/Pa. */
export function discTorquePerPressure({ pistonArea, friction, effectiveRadius }: DiscBrake): number {
  const pull = 2 * positive(friction, "friction") * positive(pistonArea, "pistonArea");
  return pull * positive(effectiveRadius, "effectiveRadius");
}

/** Line pressure less the threshold, never below zero, Pa. */
export function workingPressure(pressure: number, threshold = 0): number {
  return Math.max(0, notNegative(pressure, "pressure") - notNegative(threshold, "thresholdPressure"));
}

/**
 * Effective radius of a pad, m: the mean of its inner and outer radius (pad worn evenly). A pad pressed evenly has
 * 2/3·(R³ − r³)/(R² − r²), which is a little more; see {@link evenPressureRadius}.
 * @param outer wheel centre to the pad's outer edge, m: the disc's radius where the pad reaches its rim
 * @param padHeight radial height of the friction material, m
 */
export function padRadius(outer: number, padHeight: number): number {
  return positive(outer, "outer") - checkedHeight(outer, padHeight) / 2;
}

/** Effective radius of a new pad pressed evenly, m: 2/3·(R³ − r³)/(R² − r²). */
export function evenPressureRadius(outer: number, padHeight: number): number {
  const inner = positive(outer, "outer") - checkedHeight(outer, padHeight);
  return (2 / 3) * ((outer * outer + outer * inner + inner * inner) / (outer + inner));
}

function checkedHeight(outer: number, padHeight: number): number {
  if (positive(padHeight, "padHeight") < outer) return padHeight;
  throw new CalcRefusal(
    "PAD_TOO_HIGH",
    `a pad of ${written(padHeight, "length")} does not fit a disc of ${written(outer, "length")} radius`,
    "padHeight",
  );
}
