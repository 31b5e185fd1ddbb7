import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive, written } from "../spring/guard";
import { type Bar, type BarFlexibility, barCompliance } from "./compliance";

/**
 * Antisymmetric rate of an anti-roll bar, N/m: force at one end over movement of that end while the other moves as
 * far the opposite way. Twice the rate with one end held, which many tables print.
 * @throws CalcRefusal as {@link barCompliance}
 */
export function barRate(bar: Bar, flexibility: BarFlexibility = {}): number {
  return 1 / barCompliance(bar, flexibility).total;
}

/**
 * Rate at the wheel, N/m: rate × (bar-end movement per wheel movement)².
 * @throws CalcRefusal unless rate ≥ 0 and motion ratio > 0
 */
export function barWheelRate(rate: number, motionRatio: number): number {
  return notNegative(rate, "rate") * positive(motionRatio, "motionRatio") ** 2;
}

/**
 * Roll rate of two equal wheel rates a track apart, k·t²/2, N·m/rad. The wheel rate of a bar is the antisymmetric one.
 * @throws CalcRefusal unless wheel rate ≥ 0 and track > 0
 */
export function rollRateOfWheelRate(wheelRate: number, track: number): number {
  return (notNegative(wheelRate, "wheelRate") * positive(track, "track") ** 2) / 2;
}

/** Wheel rate that gives a roll rate at a track, 2K/t², N/m; the inverse of {@link rollRateOfWheelRate}. */
export function wheelRateOfRollRate(rollRate: number, track: number): number {
  return (2 * notNegative(rollRate, "rollRate")) / positive(track, "track") ** 2;
}

/**
 * Motion ratio of a pick-up part of the way along a lever that swings about its inner end:
 * (length − distance of the pick-up from the outer joint) ÷ length. Holds for a single arm whose outer joint moves
 * with the wheel; camber change and a leaning drop link are left out.
 * @throws CalcRefusal unless 0 ≤ distance < length
 */
export function leverMotionRatio(leverLength: number, fromOuterJoint: number): number {
  positive(leverLength, "leverLength");
  if (notNegative(fromOuterJoint, "fromOuterJoint") < leverLength)
    return (leverLength - fromOuterJoint) / leverLength;
  throw new CalcRefusal(
    "PICK_UP_BEYOND_PIVOT",
    `the pick-up, ${written(fromOuterJoint, "length")} from the outer joint, must lie on the lever of ${written(leverLength, "length")}`,
    "fromOuterJoint",
  );
}

/**
 * Outside diameter, m, at which a bar of the given shape reaches a wanted antisymmetric rate, N/m. A tube keeps its
 * ratio of bore to diameter. Exact: every compliance of the bar itself goes with 1/d⁴, links and bushes stay.
 * @throws CalcRefusal (`SOFTER_IN_SERIES`) when links and bushes alone are softer than the rate wanted
 */
export function barDiameterForRate(wantedRate: number, bar: Bar, flexibility: BarFlexibility = {}): number {
  const { bushes, links, total } = barCompliance(bar, flexibility);
  const room = 1 / positive(wantedRate, "wantedRate") - bushes - links;
  if (room > 0) return bar.section.diameter * ((total - bushes - links) / room) ** 0.25;
  throw new CalcRefusal(
    "SOFTER_IN_SERIES",
    `no bar reaches ${written(wantedRate, "rate")} at its end: links and bushes alone allow less than ${written(1 / (bushes + links), "rate")}`,
    "wantedRate",
  );
}
