import type { Vector } from "../alignment/vector";

/**
 * A vector that the solvers write into. Positions are solved thousands of times for one answer, so the operations
 * below put their result into their first argument instead of making a new object.
 */
export interface MutableVector {
  x: number;
  y: number;
  z: number;
}

/**
 * Fields in this order and no other: literals of x, y and z share one hidden class with all others of the program, and
 * one point in trade notation (x: "135 mm") among those makes the engine box every number of every vector.
 */
function coordinates(x: number, y: number, z: number): MutableVector {
  return { z, y, x };
}

/** A new vector to write into, at `from` or at the origin. */
export function mutable(from?: Vector): MutableVector {
  return from === undefined ? coordinates(0, 0, 0) : coordinates(from.x, from.y, from.z);
}

/** out = a */
export function copy(out: MutableVector, a: Vector): void {
  out.x = a.x;
  out.y = a.y;
  out.z = a.z;
}

/** out = a − b; `out` may be either. */
export function subtract(out: MutableVector, a: Vector, b: Vector): void {
  out.x = a.x - b.x;
  out.y = a.y - b.y;
  out.z = a.z - b.z;
}

/** out = a + b·factor; `out` may be `a`. */
export function addScaled(out: MutableVector, a: Vector, b: Vector, factor: number): void {
  out.x = a.x + b.x * factor;
  out.y = a.y + b.y * factor;
  out.z = a.z + b.z * factor;
}

/** out = a × b; `out` must be neither. */
export function cross(out: MutableVector, a: Vector, b: Vector): void {
  out.x = a.y * b.z - a.z * b.y;
  out.y = a.z * b.x - a.x * b.z;
  out.z = a.x * b.y - a.y * b.x;
}

/** Multiplies `out` by a factor. */
export function scale(out: MutableVector, factor: number): void {
  out.x *= factor;
  out.y *= factor;
  out.z *= factor;
}

/** a · b */
export function dot(a: Vector, b: Vector): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

/** Length of a vector. */
export function length(a: Vector): number {
  // Math.hypot guards against overflow at ten times the cost; these are metres.
  return Math.sqrt(a.x * a.x + a.y * a.y + a.z * a.z);
}

/** Distance between two points. */
export function distance(a: Vector, b: Vector): number {
  const x = a.x - b.x;
  const y = a.y - b.y;
  const z = a.z - b.z;
  return Math.sqrt(x * x + y * y + z * z);
}

/** Makes `out` of length 1; a vector without length stays as it is. */
export function normalise(out: MutableVector): void {
  const size = length(out);
  if (size > 0) scale(out, 1 / size);
}

/** a + b as a new vector. */
export function plus(a: Vector, b: Vector): Vector {
  return coordinates(a.x + b.x, a.y + b.y, a.z + b.z);
}

/** A point turned about another by a rotation vector (rad, right-handed about its own direction), as a new vector. */
export function turnAbout(point: Vector, centre: Vector, turn: Vector): Vector {
  const angle = length(turn);
  const arm = mutable();
  subtract(arm, point, centre);
  if (angle === 0) return plus(centre, arm);
  const axis = mutable(turn);
  normalise(axis);
  const side = mutable();
  cross(side, axis, arm);
  const turned = mutable();
  addScaled(turned, centre, arm, Math.cos(angle));
  addScaled(turned, turned, side, Math.sin(angle));
  addScaled(turned, turned, axis, dot(axis, arm) * (1 - Math.cos(angle)));
  return turned;
}

/** The point half way, as a new vector. */
export function midpoint(a: Vector, b: Vector): Vector {
  return coordinates((a.x + b.x) / 2, (a.y + b.y) / 2, (a.z + b.z) / 2);
}
