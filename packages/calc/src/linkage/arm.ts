import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import type { Body } from "./body";
import type { Circle } from "./circle";
import {
  addScaled,
  cross,
  dot,
  length,
  type MutableVector,
  midpoint,
  mutable,
  normalise,
  subtract,
} from "./vector";

/** An arm on two pivots with a joint at its outer end, in the design position, metres. */
export interface ArmPoints {
  readonly front: Vector;
  readonly rear: Vector;
  readonly outer: Vector;
}

const arrow = mutable();

interface Frame {
  readonly centre: MutableVector;
  readonly axis: MutableVector;
  readonly radial: MutableVector;
  readonly square: MutableVector;
}

/**
 * A wishbone: turns about the line through its pivots and carries its outer joint round a circle. `shape` says what
 * the arm is like (joint adjusted or not), `pivots` where they are on the chassis now (shimmed or not). The arm is
 * rigid and stays centred between its pivots.
 */
export class Arm implements Body {
  readonly circle: Circle;
  /** Where the joint is now. */
  readonly outer = mutable();
  /** Turn per metre of wheel-centre rise, rack held; set by the linkage. */
  rate = 0;
  private readonly design: Frame;
  private readonly now: Frame;
  private cosine = 1;
  private sine = 0;

  constructor(shape: ArmPoints, pivots: { readonly front: Vector; readonly rear: Vector }, place: string) {
    const axial = mutable();
    const middle = midpoint(shape.front, shape.rear);
    const axis = axisOf(shape.front, shape.rear, place);
    subtract(axial, shape.outer, middle);
    const along = dot(axial, axis);
    this.design = frameOf({ middle, axis, along, toward: axial });
    const radius = length(axial);
    if (!(radius > 1e-3)) throw degenerate(place, "its outer joint lies on the line through its pivots");
    const axisNow = axisOf(pivots.front, pivots.rear, place);
    const toward = mutable(this.design.radial);
    this.now = frameOf({ middle: midpoint(pivots.front, pivots.rear), axis: axisNow, along, toward });
    this.circle = { centre: this.now.centre, axis: this.now.axis, radius };
    this.turnTo(0);
  }

  /** Turns the arm from its design position by `angle` (rad) about front → rear. */
  turnTo(angle: number): void {
    this.cosine = Math.cos(angle);
    this.sine = Math.sin(angle);
    addScaled(this.outer, this.circle.centre, this.now.radial, this.circle.radius * this.cosine);
    addScaled(this.outer, this.outer, this.now.square, this.circle.radius * this.sine);
  }

  /** Turns the arm to where its joint has been put. */
  follow(): void {
    subtract(arrow, this.outer, this.circle.centre);
    this.cosine = dot(arrow, this.now.radial) / this.circle.radius;
    this.sine = dot(arrow, this.now.square) / this.circle.radius;
  }

  /** Puts into `out` the joint's velocity per radian of turn. */
  sweep(out: MutableVector): void {
    subtract(arrow, this.outer, this.circle.centre);
    cross(out, this.circle.axis, arrow);
  }

  /** The joint's height over its turn: middle + radius·cos(angle − phase), phase within ±π. */
  heightSwing(): { middle: number; radius: number; phase: number } {
    const { radial, square } = this.now;
    const level = Math.sqrt(radial.z * radial.z + square.z * square.z);
    return {
      middle: this.circle.centre.z,
      radius: this.circle.radius * level,
      phase: Math.atan2(square.z, radial.z),
    };
  }

  attach(design: Vector): Vector {
    subtract(arrow, design, this.design.centre);
    return {
      x: dot(arrow, this.design.radial),
      y: dot(arrow, this.design.square),
      z: dot(arrow, this.design.axis),
    };
  }

  locate(out: MutableVector, attached: Vector): void {
    addScaled(out, this.circle.centre, this.circle.axis, attached.z);
    addScaled(out, out, this.now.radial, attached.x * this.cosine - attached.y * this.sine);
    addScaled(out, out, this.now.square, attached.x * this.sine + attached.y * this.cosine);
  }

  velocity(out: MutableVector, point: Vector): void {
    subtract(arrow, point, this.circle.centre);
    cross(out, this.circle.axis, arrow);
    out.x *= this.rate;
    out.y *= this.rate;
    out.z *= this.rate;
  }
}

function axisOf(front: Vector, rear: Vector, place: string): MutableVector {
  const axis = mutable();
  subtract(axis, rear, front);
  if (!(length(axis) > 1e-3))
    throw degenerate(place, "its two pivots lie on the same spot, so it has no axis to turn about");
  normalise(axis);
  return axis;
}

/** `toward` is cut down to its part square to the axis, and so tells the radius. */
function frameOf(of: { middle: Vector; axis: MutableVector; along: number; toward: MutableVector }): Frame {
  const centre = mutable();
  addScaled(centre, of.middle, of.axis, of.along);
  addScaled(of.toward, of.toward, of.axis, -dot(of.toward, of.axis));
  const radial = mutable(of.toward);
  normalise(radial);
  const square = mutable();
  cross(square, of.axis, radial);
  return { centre, axis: of.axis, radial, square };
}

function degenerate(place: string, why: string): CalcRefusal {
  return new CalcRefusal("DEGENERATE_LINKAGE", `the ${place} cannot work: ${why}`, place);
}
