import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import { type MutableVector, mutable } from "./vector";
import type { Wheel } from "./wheel";

/** The ground under an axle in the car's axes. */
export interface Ground {
  /** Unit normal: (0, sin roll, cos roll). */
  readonly up: Vector;
  readonly left: MutableVector;
  readonly right: MutableVector;
}

/** Unit normal of the ground when the car rolls by `roll` (rad, left side up). */
export function upAt(roll: number): Vector {
  return { x: 0, y: Math.sin(roll), z: Math.cos(roll) };
}

const mostRounds = 60;

/**
 * The ground that both wheels stand on, each with the lowest point of its disc. Where that point lies depends on the
 * ground's slope and the slope on the points, so it is found in rounds; a round shrinks the error about a hundredfold.
 */
export function groundUnder(leftWheel: Wheel, rightWheel: Wheel): Ground {
  const left = mutable();
  const right = mutable();
  let roll = 0;
  for (let round = 0; round < mostRounds; round += 1) {
    const up = upAt(roll);
    leftWheel.contact(left, up);
    rightWheel.contact(right, up);
    const next = Math.atan2(right.z - left.z, left.y - right.y);
    if (Math.abs(next - roll) < 1e-14) return { up, left, right };
    roll = next;
  }
  throw new CalcRefusal("NO_GROUND", "no ground touches both wheels: they stand too far from upright");
}
