import type { Vector } from "../alignment/vector";
import type { Pose } from "./pose";
import { rotate } from "./pose";
import {
  addScaled,
  cross,
  distance,
  dot,
  length,
  type MutableVector,
  mutable,
  plus,
  subtract,
} from "./vector";

/** A rod between chassis and axle in the design position, metres. */
export interface Rod {
  readonly chassis: Vector;
  readonly axle: Vector;
}

/** Three longitudinal links. Two upper links side by side are entered as one between them (see `liveAxle`). */
export interface ThreeLinks {
  readonly kind: "three-link";
  readonly links: readonly [Rod, Rod, Rod];
}
/** A torque tube or A-frame, held to the chassis by one ball joint. */
export interface TorqueTube {
  readonly kind: "torque-tube";
  readonly ball: Vector;
}
/** One rod across the car. */
export interface PanhardRod extends Rod {
  readonly kind: "panhard";
}
/** A Watt linkage: a bellcrank on a pivot, and two rods from its ends to the other part. */
export interface WattLinkage {
  readonly kind: "watt";
  /** What carries the bellcrank's pivot; the rods go to the other one. */
  readonly pivotOn: "axle" | "chassis";
  readonly pivot: Vector;
  readonly firstArm: Vector;
  readonly firstEnd: Vector;
  readonly secondArm: Vector;
  readonly secondEnd: Vector;
  /** Direction the bellcrank turns about; straight ahead when left out. */
  readonly axis?: Vector | undefined;
}

/** Unknowns of a live axle: shift (x, y, z), turn (x, y, z) and, with a Watt linkage, the bellcrank's angle. */
export interface AxlePose {
  readonly pose: Pose;
  /** The point that the shift moves and the turn turns about, now. */
  readonly at: MutableVector;
  bellcrank: number;
}

/** A condition on the axle: how far it is from being met (m), and how that changes with each unknown. */
export interface Condition {
  measure(axle: AxlePose, gradient: number[]): number;
}

const point = mutable();
const other = mutable();
const line = mutable();
const arm = mutable();
const moment = mutable();
const turned = mutable();

/** Writes the gradient of a condition that sees the axle's point `at point` move along `direction`. */
function seen(axle: AxlePose, direction: Vector, gradient: number[]): void {
  subtract(arm, point, axle.at);
  cross(moment, arm, direction);
  gradient[0] = direction.x;
  gradient[1] = direction.y;
  gradient[2] = direction.z;
  gradient[3] = moment.x;
  gradient[4] = moment.y;
  gradient[5] = moment.z;
  if (gradient.length > 6) gradient[6] = 0;
}

/** The rod keeps its length. */
export function rodCondition(rod: Rod): Condition {
  const reach = distance(rod.chassis, rod.axle);
  return {
    measure(axle, gradient) {
      axle.pose.place(point, rod.axle);
      subtract(line, point, rod.chassis);
      const size = length(line);
      addScaled(line, line, line, 1 / size - 1);
      seen(axle, line, gradient);
      return size - reach;
    },
  };
}

/** One coordinate of a point of the axle keeps a value that may be changed: the wheel centre's height, the ball joint. */
export function coordinateCondition(design: Vector, direction: Vector, wanted: () => number): Condition {
  return {
    measure(axle, gradient) {
      axle.pose.place(point, design);
      seen(axle, direction, gradient);
      return dot(point, direction) - wanted();
    },
  };
}

/** Both rods of a Watt linkage keep their length. */
export function wattConditions(watt: WattLinkage): [Condition, Condition] {
  return [
    wattRod(watt, { arm: watt.firstArm, end: watt.firstEnd }),
    wattRod(watt, { arm: watt.secondArm, end: watt.secondEnd }),
  ];
}

function wattRod(watt: WattLinkage, rod: { readonly arm: Vector; readonly end: Vector }): Condition {
  const reach = distance(rod.arm, rod.end);
  const out = mutable();
  subtract(out, rod.arm, watt.pivot);
  const given = watt.axis ?? { x: 1, y: 0, z: 0 };
  const axis = mutable();
  addScaled(axis, axis, given, 1 / length(given));
  const swing = mutable();
  const carried = watt.pivotOn === "axle";
  return {
    measure(axle, gradient) {
      addScaled(moment, { x: 0, y: 0, z: 0 }, axis, axle.bellcrank);
      rotate(turned, out, moment);
      cross(swing, axis, turned);
      const joint = plus(watt.pivot, turned);
      // `point` is the rod's end on the axle, `other` the one on the chassis.
      axle.pose.place(point, carried ? joint : rod.end);
      addScaled(other, carried ? rod.end : joint, axis, 0);
      if (carried) axle.pose.turn(turned, swing);
      else addScaled(turned, { x: 0, y: 0, z: 0 }, swing, -1);
      subtract(line, point, other);
      const size = length(line);
      addScaled(line, line, line, 1 / size - 1);
      seen(axle, line, gradient);
      gradient[6] = dot(turned, line);
      return size - reach;
    },
  };
}
