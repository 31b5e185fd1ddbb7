import { CalcRefusal } from "../catalogue/refusal";
import { standardGravity } from "../quantity/unit-table/unit";
import { finite, positive } from "../spring/guard";
import { type CornerMasses, type CornerName, cornerNames, cornerSums } from "./corner";

/** What decides how a car takes up warp. SI. */
export interface WarpCar {
  /** Wheel rates, N/m, tyres in series where they count; anti-roll bars disconnected. */
  readonly wheelRates: CornerMasses;
  readonly frontTrack: number;
  readonly rearTrack: number;
}

/** +1 for the corners that gain with the right front, −1 for the others. */
const crossSign: Readonly<Record<CornerName, 1 | -1>> = {
  leftFront: -1,
  rightFront: 1,
  leftRear: 1,
  rightRear: -1,
};

/**
 * Change of the corner loads, N, when one corner's spring seat is moved so that its wheel would go down by `lift`
 * (m, relative to the chassis; negative raises the wheel). The car settles; its weight and the moments about both axes
 * stay balanced, so that each axle gains on one side what it loses on the other, and front and rear moments cancel:
 * ΔF_f·t_f = ΔF_r·t_r.
 *
 * Exact for linear wheel rates and a rigid chassis with the bars off.
 * @throws CalcRefusal unless every rate and track is greater than zero
 */
export function seatLiftLoads(car: WarpCar, corner: CornerName, lift: number): CornerMasses {
  const { frontTrack, rearTrack, wheelRates } = checkedWarpCar(car);
  const give = (a: CornerName, b: CornerName) => 1 / wheelRates[a] + 1 / wheelRates[b];
  const front = give("leftFront", "rightFront") / frontTrack ** 2;
  const rear = give("leftRear", "rightRear") / rearTrack ** 2;
  const track = corner.endsWith("Front") ? frontTrack : rearTrack;
  // Warp angle asked for, over the give of both axles to a moment: the moment that locks in.
  const moment = (crossSign[corner] * finite(lift, "lift")) / track / (front + rear);
  const at = (name: CornerName) =>
    (crossSign[name] * moment) / (name.endsWith("Front") ? frontTrack : rearTrack);
  return {
    leftFront: at("leftFront"),
    rightFront: at("rightFront"),
    leftRear: at("leftRear"),
    rightRear: at("rightRear"),
  };
}

/**
 * Lift at one corner's wheel, m, that brings the cross weight to a wanted share; the inverse of {@link seatLiftLoads}.
 * @param corners what the scales show, kg
 * @param crossShare wanted, of 1
 */
export function seatLiftForCross(
  car: WarpCar,
  corners: CornerMasses,
  { corner, crossShare }: { readonly corner: CornerName; readonly crossShare: number },
): number {
  const { total, crossShare: present } = cornerSums(corners);
  if (!(finite(crossShare, "crossShare") > 0 && crossShare < 1))
    throw new CalcRefusal(
      "NOT_A_SHARE",
      `the cross weight must lie between 0 and 100 %, but ${crossShare} is wanted`,
      "crossShare",
    );
  const perMetre = seatLiftLoads(car, corner, 1);
  const gain = perMetre.rightFront + perMetre.leftRear;
  return ((crossShare - present) * total * standardGravity) / gain;
}

function checkedWarpCar(car: WarpCar): WarpCar {
  positive(car.frontTrack, "frontTrack");
  positive(car.rearTrack, "rearTrack");
  for (const corner of cornerNames) positive(car.wheelRates[corner], `wheelRates.${corner}`);
  return car;
}
