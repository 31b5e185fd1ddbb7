import { CalcRefusal } from "../catalogue/refusal";

/**
 * Distance in metres by which the front edge of a rim stands in from the rear edge, at hub height, for the toe-in
 * of one wheel in radians: D·sin(toe). The same holds for camber, top against bottom, looking along the wheel.
 *
 * `diameter` is the one the distance is measured over (m): the rim's edge, not the nominal size, unless that is
 * what the figure was given for.
 *
 * @throws RangeError if the angle is beyond ±90° or the diameter is not above 0
 * @example distanceAtRim(Math.PI / 6, 0.4) // => 0.2
 */
export function distanceAtRim(angle: number, diameter: number): number {
  requireDiameter(diameter);
  if (!(Math.abs(angle) <= Math.PI / 2))
    throw new RangeError(`the angle must lie within ±90°, but is ${angle} rad`);
  return diameter * Math.sin(angle);
}

/**
 * Angle in radians of one wheel from the distance (m) measured over `diameter` (m): asin(d/D), exact.
 * @throws CalcRefusal if the distance is greater than the diameter
 */
export function angleFromRim(distance: number, diameter: number): number {
  requireDiameter(diameter);
  if (!(Math.abs(distance) <= diameter)) {
    throw new CalcRefusal(
      "BEYOND_RIM",
      `a difference of ${distance} m cannot be measured over a diameter of ${diameter} m: it must not be greater`,
      "distance",
    );
  }
  return Math.asin(distance / diameter);
}

/**
 * Total toe distance (m) of an axle: both wheels' distances together. `toeIn` per wheel in radians.
 * @throws RangeError as {@link distanceAtRim}
 */
export function totalDistanceAtRim(toeIn: { left: number; right: number }, diameter: number): number {
  return distanceAtRim(toeIn.left, diameter) + distanceAtRim(toeIn.right, diameter);
}

/**
 * Total toe in radians from the total distance (m) of an axle, both wheels standing alike: 2·asin(d/2D).
 * An uneven split with the same distance has a total that differs in the third order only.
 * @throws CalcRefusal if half the distance is greater than the diameter
 */
export function totalToeFromRim(distance: number, diameter: number): number {
  return 2 * angleFromRim(distance / 2, diameter);
}

function requireDiameter(diameter: number): void {
  if (!(diameter > 0 && Number.isFinite(diameter))) {
    throw new RangeError(`the diameter must be above 0 m, but is ${diameter}`);
  }
}
