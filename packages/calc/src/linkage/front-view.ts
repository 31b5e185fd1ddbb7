import type { Vector } from "../alignment/vector";
import { cross, mutable, subtract } from "./vector";

/**
 * A point of the front view (y, z) in homogeneous coordinates, so that parallel arms need no case of their own: the
 * point (y/w, z/w), or the direction (y, z) at infinity where w is 0.
 */
export interface HomogeneousPoint {
  readonly y: number;
  readonly z: number;
  readonly w: number;
}

/** A point of the front view, metres. */
export interface FrontPoint {
  readonly y: number;
  readonly z: number;
}

/** A line a·y + b·z + c = 0 of the front view, with a² + b² = 1. */
export interface Trace {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** Arms whose traces are nearer to parallel than this (rad) meet at infinity. */
const parallel = 1e-9;

/**
 * Trace of the plane through `point` square to `normal` in the transverse plane at `x`, or `null` if the planes are
 * parallel.
 */
export function traceOf(point: Vector, normal: Vector, x: number): Trace | null {
  const size = Math.sqrt(normal.y * normal.y + normal.z * normal.z);
  if (!(size > 1e-9 * Math.abs(normal.x))) return null;
  const c = normal.x * (x - point.x) - normal.y * point.y - normal.z * point.z;
  return { a: normal.y / size, b: normal.z / size, c: c / size };
}

/** Trace of an arm's plane, through its pivots and its joint as it stands now. */
export function armTrace(arm: { front: Vector; rear: Vector; outer: Vector }, x: number): Trace | null {
  subtract(along, arm.rear, arm.front);
  subtract(across, arm.outer, arm.front);
  cross(normal, along, across);
  return traceOf(arm.front, normal, x);
}

const along = mutable();
const across = mutable();
const normal = mutable();

/** Where two traces meet. All noughts, which is no point, if one is missing or they coincide. */
export function meet(p: Trace | null, q: Trace | null): HomogeneousPoint {
  if (p === null || q === null) return { y: 0, z: 0, w: 0 };
  const w = p.a * q.b - p.b * q.a;
  return { y: p.b * q.c - p.c * q.b, z: p.c * q.a - p.a * q.c, w: Math.abs(w) < parallel ? 0 : w };
}

/** The point itself, or `null` at infinity. */
export function finite({ y, z, w }: HomogeneousPoint): FrontPoint | null {
  return w === 0 ? null : { y: y / w, z: z / w };
}

/**
 * Height (m, chassis axes) at which the line from the contact point to the instant centre crosses the centre plane,
 * or `null` where it does not: a line upright in the front view, or no instant centre at all.
 */
export function centrePlaneHeight(contact: Vector, { y, z, w }: HomogeneousPoint): number | null {
  const run = y - w * contact.y;
  const rise = z - w * contact.z;
  const size = Math.sqrt(run * run + rise * rise);
  if (!(Math.abs(run) > parallel * size)) return null;
  return contact.z - (contact.y * rise) / run;
}
