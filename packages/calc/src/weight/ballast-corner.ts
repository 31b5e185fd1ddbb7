import { CalcRefusal } from "../catalogue/refusal";
import { finite, positive } from "../spring/guard";
import { type CornerMasses, cornerSums } from "./corner";

/** What decides how a car on its springs takes up a load that is not in its middle. SI; left and right alike. */
export interface SprungPlan {
  readonly wheelbase: number;
  readonly frontTrack: number;
  readonly rearTrack: number;
  /** Wheel rates, N/m, tyres in series where they count; anti-roll bars disconnected. */
  readonly frontWheelRate: number;
  readonly rearWheelRate: number;
}

/** Where a ballast is put: m behind the front axle, and m to the left of the car's centre plane. */
export interface BallastPlace {
  readonly behind: number;
  readonly left: number;
}

/**
 * Share of a moment about the car's long axis that the front springs take: k_f·t_f²/(k_f·t_f² + k_r·t_r²).
 * @throws CalcRefusal unless every rate and track is greater than zero
 */
export function frontRollShare(plan: SprungPlan): number {
  const front =
    positive(plan.frontWheelRate, "frontWheelRate") * positive(plan.frontTrack, "frontTrack") ** 2;
  const rear = positive(plan.rearWheelRate, "rearWheelRate") * positive(plan.rearTrack, "rearTrack") ** 2;
  return front / (front + rear);
}

/**
 * The corner weights, kg, with a ballast bolted in: each axle gains by the lever, each side by the roll that the springs
 * share. Exact for a rigid chassis on linear springs alike left and right.
 * @throws CalcRefusal unless the ballast and the plan are greater than zero
 */
export function cornersWithBallast(
  corners: CornerMasses,
  { ballast, place, plan }: { ballast: number; place: BallastPlace; plan: SprungPlan },
): CornerMasses {
  const mass = positive(ballast, "ballast");
  const rear = (mass * finite(place.behind, "behind")) / positive(plan.wheelbase, "wheelbase");
  const moment = mass * finite(place.left, "left");
  const share = frontRollShare(plan);
  const frontSide = (share * moment) / plan.frontTrack;
  const rearSide = ((1 - share) * moment) / plan.rearTrack;
  return {
    leftFront: corners.leftFront + (mass - rear) / 2 + frontSide,
    rightFront: corners.rightFront + (mass - rear) / 2 - frontSide,
    leftRear: corners.leftRear + rear / 2 + rearSide,
    rightRear: corners.rightRear + rear / 2 - rearSide,
  };
}

/** What a ballast of a given mass is wanted to do: the fore-and-aft balance, and one of the two that follow its sideways place. */
export interface BallastTarget {
  readonly ballast: number;
  readonly frontShare: number;
  readonly leftShare?: number | undefined;
  readonly crossShare?: number | undefined;
}

/**
 * Where a ballast of a given mass must go for a front share and, of left share and cross weight, the one asked for.
 * One place has two coordinates: the third share follows.
 *
 * @throws CalcRefusal (`GIVE_ONE`) unless exactly one of left share and cross weight is asked for; (`CROSS_STAYS`) where
 *   a weight moved sideways does not change the cross weight, since both axles share it as the car's tracks do
 */
export function placeForTarget(corners: CornerMasses, target: BallastTarget, plan: SprungPlan): BallastPlace {
  const { total, front, left, cross } = cornerSums(corners);
  const ballast = positive(target.ballast, "ballast");
  const then = total + ballast;
  const behind =
    positive(plan.wheelbase, "wheelbase") *
    (1 - (finite(target.frontShare, "frontShare") * then - front) / ballast);
  const share = frontRollShare(plan);
  const [frontArm, rearArm] = [share / plan.frontTrack, (1 - share) / plan.rearTrack];
  const sideways = ({ wanted, now, arm }: { wanted: number; now: number; arm: number }) =>
    (wanted * then - now - ballast / 2) / (ballast * arm);
  const { leftShare, crossShare } = target;
  if ((leftShare === undefined) === (crossShare === undefined))
    throw new CalcRefusal(
      "GIVE_ONE",
      "one of leftShare and crossShare is wanted: a ballast has one place across the car",
      "leftShare",
    );
  if (crossShare === undefined)
    return {
      behind,
      left: sideways({ wanted: leftShare ?? Number.NaN, now: left, arm: frontArm + rearArm }),
    };
  if (Math.abs(rearArm - frontArm) < crossNotMoved * (rearArm + frontArm))
    throw new CalcRefusal(
      "CROSS_STAYS",
      "with these rates and tracks a weight moved sideways leaves the cross weight as it is: move a spring seat instead",
      "crossShare",
    );
  return { behind, left: sideways({ wanted: crossShare, now: cross, arm: rearArm - frontArm }) };
}

/** Difference of what the axles take, of their sum, below which the place would lie far outside any car. */
const crossNotMoved = 1e-3;
