import type { Vector } from "../alignment/vector";
import { addScaled, copy, cross, dot, type MutableVector, mutable, subtract } from "./vector";

/** The circle a joint travels on: about `axis` (unit) through `centre`. Written into while solving. */
export interface Circle {
  readonly centre: MutableVector;
  readonly axis: MutableVector;
  radius: number;
}

const toSphere = mutable();
const square = mutable();

/** Sets `toSphere` to the part of centre → point that lies in the circle's plane, and answers the part that does not. */
function project(circle: Circle, point: Vector): number {
  subtract(toSphere, point, circle.centre);
  const out = dot(toSphere, circle.axis);
  addScaled(toSphere, toSphere, circle.axis, -out);
  cross(square, circle.axis, toSphere);
  return out;
}

/**
 * Puts into `out` the point where a circle meets the sphere of `reach` about `centre`: a rod's end on an arm's circle,
 * closed form. Of the two points `branch` (+1 or −1) chooses; see {@link branchOf}.
 * Answers false, leaving `out` alone, where they do not meet.
 */
export function meetSphere(
  out: MutableVector,
  circle: Circle,
  { centre, reach, branch }: { readonly centre: Vector; readonly reach: number; readonly branch: number },
): boolean {
  const off = project(circle, centre);
  const { radius } = circle;
  const planar = dot(toSphere, toSphere);
  const along = (radius * radius + planar + off * off - reach * reach) / 2;
  const rest = radius * radius * planar - along * along;
  if (!(rest >= 0 && planar > 0)) return false;
  copy(out, circle.centre);
  addScaled(out, out, toSphere, along / planar);
  addScaled(out, out, square, (branch * Math.sqrt(rest)) / planar);
  return true;
}

/**
 * On which side of the line from the circle's centre to the sphere's centre a point of the circle lies: +1 or −1, and
 * 0 where it lies on it, so that the linkage stands at a dead centre and either side could follow.
 */
export function branchOf(circle: Circle, sphereCentre: Vector, point: Vector): -1 | 0 | 1 {
  project(circle, sphereCentre);
  const side =
    square.x * (point.x - circle.centre.x) +
    square.y * (point.y - circle.centre.y) +
    square.z * (point.z - circle.centre.z);
  const scale = Math.sqrt(dot(square, square)) * circle.radius;
  if (!(Math.abs(side) > 1e-6 * scale)) return 0;
  return side > 0 ? 1 : -1;
}
