import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import { Arm } from "./arm";
import type { Corner, HungMounts, HungStrut, SteeringAxis } from "./corner";
import { armTrace, type HomogeneousPoint, meet, traceOf } from "./front-view";
import {
  type Adjustment,
  type Lean,
  type Mounts,
  requirePoints,
  requireWheel,
  type Steering,
  shiftPoints,
  type TieRod,
  type WheelHardpoints,
} from "./hardpoint";
import { hang, snapshot } from "./mount";
import { SteeredCorner } from "./steered-corner";
import { Upright } from "./upright";
import {
  addScaled,
  cross,
  distance,
  dot,
  length,
  type MutableVector,
  mutable,
  normalise,
  subtract,
  turnAbout,
} from "./vector";
import { Wheel } from "./wheel";

/** Points of a strut that may be adjusted, in the design position, metres. */
export interface StrutPoints extends TieRod {
  readonly lowerArmFront: Vector;
  readonly lowerArmRear: Vector;
  readonly lowerJoint: Vector;
  /** Centre of the top mount, on the chassis. */
  readonly strutTop: Vector;
}
/** A hardpoint that may be adjusted. */
export type StrutPoint = keyof StrutPoints;
/** The parts that a spring, damper or drop link may hang on. */
export type StrutPart = "lowerArm" | "upright";

/** A MacPherson strut corner; spring and damper left out act along the strut itself. */
export interface StrutHardpoints extends WheelHardpoints, StrutPoints, Steering, Mounts<StrutPart> {
  /** A point of the upright on the strut's axis, e.g. the bottom of its tube. The axis need not meet the ball joint. */
  readonly strutFoot: Vector;
}

/** The moving points of a strut. */
export type StrutJoint = "lowerJoint" | "strutFoot" | "tieRodInner" | "tieRodOuter" | "wheelCentre";

interface StrutAsAdjusted {
  readonly hardpoints: StrutHardpoints;
  /** The hardpoints as shifted. */
  readonly points: StrutPoints;
  readonly lean: Lean | undefined;
}

class Strut extends SteeredCorner {
  readonly mounts: HungMounts;
  readonly steeringAxis: SteeringAxis | null;
  private readonly slide: SlideLine;
  /** The point of the upright, in its design position, that now stands in the top mount. */
  private readonly atTop = mutable();
  private readonly axisNow = mutable();
  private readonly acrossFirst = mutable();
  private readonly acrossSecond = mutable();
  private readonly lowerMotion: { at: Vector; velocity: Vector };
  private readonly topHold: { at: Vector; fixed: readonly [Vector, Vector] };
  private readonly points: StrutPoints;

  constructor({ hardpoints, points, lean }: StrutAsAdjusted, lower: Arm, upright: Upright) {
    super(new Wheel(hardpoints), lower, upright, hardpoints);
    this.points = points;
    this.slide = slideLine(leant(hardpoints, lean));
    this.steeringAxis = this.steered ? { lower: lower.outer, upper: points.strutTop } : null;
    this.lowerMotion = { at: lower.outer, velocity: this.axisNow };
    this.topHold = { at: points.strutTop, fixed: [this.acrossFirst, this.acrossSecond] };
    const hung = hang(hardpoints, { lowerArm: lower, upright });
    const own = (): HungStrut => this.readStrut();
    this.mounts = {
      spring: hardpoints.spring === undefined ? own : hung.spring,
      damper: hardpoints.damper === undefined ? own : hung.damper,
      bar: hung.bar,
    };
    this.begin();
  }

  protected carry(): boolean {
    const { foot, axis, offset } = this.slide;
    const reach = distance(this.points.strutTop, this.lower.outer);
    const along = reach * reach - offset * offset;
    if (!(along > 0)) return false;
    addScaled(this.atTop, foot, axis, Math.sqrt(along));
    return this.upright.settle(this.lower.outer, this.atTop, this.points.strutTop);
  }

  protected differentiate(lowerVelocity: Vector): boolean {
    this.upright.pose.turn(this.axisNow, this.slide.axis);
    // Two directions square to the strut: in these its point at the top mount cannot move.
    cross(this.acrossFirst, this.axisNow, forward);
    cross(this.acrossSecond, this.axisNow, this.acrossFirst);
    this.lowerMotion.velocity = lowerVelocity;
    return this.upright.differentiate(this.lowerMotion, this.topHold);
  }

  instantCentre(): HomogeneousPoint {
    const { points, wheel } = this;
    const lower = { front: points.lowerArmFront, rear: points.lowerArmRear, outer: this.lower.outer };
    return meet(armTrace(lower, wheel.centre.x), traceOf(points.strutTop, this.axisNow, wheel.centre.x));
  }

  joints(): Readonly<Record<StrutJoint, Vector>> {
    const strutFoot = mutable();
    this.upright.locate(strutFoot, this.slide.lowEnd);
    return {
      lowerJoint: snapshot(this.lower.outer),
      strutFoot,
      tieRodInner: snapshot(this.upright.tieRodInner),
      tieRodOuter: snapshot(this.upright.tieRodOuter),
      wheelCentre: snapshot(this.wheel.centre),
    };
  }

  private readStrut(): HungStrut {
    const velocity = mutable();
    this.upright.velocity(velocity, this.points.strutTop);
    return { length: distance(this.atTop, this.slide.lowEnd), ratio: dot(velocity, this.axisNow) };
  }
}

const forward: Vector = { x: 1, y: 0, z: 0 };

/** The strut's axis in the design upright. */
interface SlideLine {
  /** Nearest point of the axis to the lower joint. */
  readonly foot: MutableVector;
  /** Unit, up. */
  readonly axis: MutableVector;
  /** Distance of the lower joint from the axis. */
  readonly offset: number;
  readonly lowEnd: Vector;
}

/** The strut against its upright after the upright was turned in its clamp: turned the other way. */
function leant<Line extends Pick<StrutHardpoints, "strutTop" | "strutFoot">>(
  line: Line,
  lean: Lean | undefined,
): Line {
  if (lean === undefined) return line;
  const back = { x: -lean.turn.x, y: -lean.turn.y, z: -lean.turn.z };
  requirePoints({ "lean.about": lean.about, "lean.turn": lean.turn });
  return {
    ...line,
    strutTop: turnAbout(line.strutTop, lean.about, back),
    strutFoot: turnAbout(line.strutFoot, lean.about, back),
  };
}

function slideLine({ strutTop, strutFoot, lowerJoint }: StrutHardpoints): SlideLine {
  const axis = mutable();
  subtract(axis, strutTop, strutFoot);
  if (!(length(axis) > 1e-3)) throw degenerate("its top and its foot lie on the same spot", "strutFoot");
  normalise(axis);
  if (!(axis.z > 0.5))
    throw degenerate("its axis lies more than 60° from upright, or its top below its foot", "strutTop");
  const toTop = mutable();
  subtract(toTop, strutTop, lowerJoint);
  const along = dot(toTop, axis);
  if (!(along > 1e-3)) throw degenerate("its top does not lie above the lower joint", "strutTop");
  const foot = mutable();
  addScaled(foot, strutTop, axis, -along);
  return { foot, axis, offset: distance(foot, lowerJoint), lowEnd: { ...strutFoot } };
}

/**
 * A MacPherson strut corner ready to be moved: closed forms from the turn of the lower arm, Newton's method for the
 * height of the wheel centre. The upright slides and turns on the strut's axis through the top mount's centre; joints
 * have no give. `adjustment` as for a double wishbone; a lean turns the upright, with everything hung on it, in its clamp.
 *
 * @throws CalcRefusal naming the hardpoint if the linkage cannot work, or cannot be assembled as adjusted
 */
export function strut(
  hardpoints: StrutHardpoints,
  adjustment: Adjustment<StrutPoint> = {},
): Corner<StrutJoint> {
  const { lowerArmFront, lowerArmRear, lowerJoint, strutTop, tieRodInner, tieRodOuter } = hardpoints;
  const points: StrutPoints = { lowerArmFront, lowerArmRear, lowerJoint, strutTop, tieRodInner, tieRodOuter };
  requireWheel(hardpoints);
  requirePoints({ ...points, strutFoot: hardpoints.strutFoot });
  const { lean, ...shifts } = adjustment;
  const now = shiftPoints(points, shifts);
  const design = { front: lowerArmFront, rear: lowerArmRear, outer: now.lowerJoint };
  const lower = new Arm(design, { front: now.lowerArmFront, rear: now.lowerArmRear }, "lower arm");
  const upright = new Upright({ lower: lowerJoint, upper: strutTop }, points, adjustment);
  return new Strut({ hardpoints, points: now, lean }, lower, upright);
}

function degenerate(why: string, place: string): CalcRefusal {
  return new CalcRefusal("DEGENERATE_LINKAGE", `the strut cannot work: ${why}`, place);
}
