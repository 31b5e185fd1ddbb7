import { requireFinite, type Vector } from "./vector";

/** Toe-in of each wheel of an axle, radians. */
export interface AxleToe {
  readonly left: number;
  readonly right: number;
}

/** How far one wheel of an axle stands behind the other. */
export interface SetBack {
  /** Metres along the car; positive with the right wheel behind the left. */
  readonly distance: number;
  /** Radians in plan, the axle's line against square across the car; sign as `distance`. */
  readonly angle: number;
}

/** Total toe of an axle in radians, the sum of the two (ISO 8855:2011, 7.1.7); positive in. */
export function totalToe({ left, right }: AxleToe): number {
  requireFinite({ left, right });
  return left + right;
}

/**
 * Thrust angle of a rear axle in radians: the bisector of the two wheels' headings against the car's x axis,
 * (left − right)/2, exact. Positive points to the right of straight ahead. Gauges differ in the sign.
 */
export function thrustAngle({ left, right }: AxleToe): number {
  requireFinite({ left, right });
  return (left - right) / 2;
}

/**
 * Set-back of an axle from its two wheel centres in the car's axes (m).
 * @throws RangeError unless the left centre lies left of the right one
 */
export function setBack(left: Vector, right: Vector): SetBack {
  requireFinite({ "left x": left.x, "left y": left.y, "right x": right.x, "right y": right.y });
  if (left.y <= right.y) {
    throw new RangeError(
      `the left wheel centre (y = ${left.y} m) must lie left of the right one (y = ${right.y} m)`,
    );
  }
  const distance = left.x - right.x;
  return { distance, angle: Math.atan2(distance, left.y - right.y) };
}
