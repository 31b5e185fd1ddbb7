import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import { Arm, type ArmPoints } from "./arm";
import { branchOf, meetSphere } from "./circle";
import type { Corner, HungMounts, SteeringAxis } from "./corner";
import { armTrace, type HomogeneousPoint, meet } from "./front-view";
import {
  type Adjustment,
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
import { distance, dot, mutable, subtract } from "./vector";
import { Wheel } from "./wheel";

/** The links of a double wishbone in the design position, metres. Its order of naming is that of the plan. */
export interface WishbonePoints extends TieRod {
  readonly lowerArmFront: Vector;
  readonly lowerArmRear: Vector;
  readonly lowerJoint: Vector;
  readonly upperArmFront: Vector;
  readonly upperArmRear: Vector;
  readonly upperJoint: Vector;
}
/** A hardpoint that may be adjusted. */
export type WishbonePoint = keyof WishbonePoints;

/** The parts that a spring, damper or drop link may hang on. */
export type WishbonePart = "lowerArm" | "upperArm" | "upright";

/** A double wishbone corner, steered by a rack or held by a toe link. */
export interface WishboneHardpoints extends WheelHardpoints, WishbonePoints, Steering, Mounts<WishbonePart> {}

/** The moving points of a double wishbone. */
export type WishboneJoint = "lowerJoint" | "upperJoint" | "tieRodInner" | "tieRodOuter" | "wheelCentre";

const still = mutable();

class DoubleWishbone extends SteeredCorner {
  readonly mounts: HungMounts;
  readonly steeringAxis: SteeringAxis | null;
  private readonly upper: Arm;
  private readonly upperDesign: Vector;
  private readonly kingpin: { readonly centre: Vector; readonly reach: number; readonly branch: number };
  private readonly fromFront = mutable();
  private readonly fromRear = mutable();
  private readonly lowerMotion: { at: Vector; velocity: Vector };
  private readonly upperHold: { at: Vector; fixed: readonly [Vector, Vector] };

  constructor(
    hardpoints: WishboneHardpoints,
    private readonly pivots: WishbonePoints,
    arms: { readonly lower: Arm; readonly upper: Arm },
    upright: Upright,
  ) {
    super(new Wheel(hardpoints), arms.lower, upright, hardpoints);
    this.upper = arms.upper;
    this.upperDesign = hardpoints.upperJoint;
    this.kingpin = {
      centre: arms.lower.outer,
      reach: distance(hardpoints.lowerJoint, hardpoints.upperJoint),
      branch: upperBranch(hardpoints),
    };
    this.steeringAxis = this.steered ? { lower: arms.lower.outer, upper: arms.upper.outer } : null;
    this.lowerMotion = { at: arms.lower.outer, velocity: still };
    this.upperHold = { at: arms.upper.outer, fixed: [this.fromFront, this.fromRear] };
    this.mounts = hang(hardpoints, { lowerArm: arms.lower, upperArm: arms.upper, upright });
    this.begin();
  }

  protected carry(): boolean {
    const { lower, upper } = this;
    if (!meetSphere(upper.outer, upper.circle, this.kingpin)) return false;
    return this.upright.settle(lower.outer, this.upperDesign, upper.outer);
  }

  protected differentiate(lowerVelocity: Vector): boolean {
    subtract(this.fromFront, this.upper.outer, this.pivots.upperArmFront);
    subtract(this.fromRear, this.upper.outer, this.pivots.upperArmRear);
    this.lowerMotion.velocity = lowerVelocity;
    return this.upright.differentiate(this.lowerMotion, this.upperHold);
  }

  protected override finish(): void {
    super.finish();
    const { upper, upright } = this;
    upper.follow();
    upper.sweep(this.fromFront);
    upright.bumpTwist.velocity(this.fromRear, upper.outer);
    upper.rate = dot(this.fromRear, this.fromFront) / upper.circle.radius ** 2;
  }

  instantCentre(): HomogeneousPoint {
    const { pivots, wheel } = this;
    const lower = { front: pivots.lowerArmFront, rear: pivots.lowerArmRear, outer: this.lower.outer };
    const upper = { front: pivots.upperArmFront, rear: pivots.upperArmRear, outer: this.upper.outer };
    return meet(armTrace(lower, wheel.centre.x), armTrace(upper, wheel.centre.x));
  }

  joints(): Readonly<Record<WishboneJoint, Vector>> {
    return {
      lowerJoint: snapshot(this.lower.outer),
      upperJoint: snapshot(this.upper.outer),
      tieRodInner: snapshot(this.upright.tieRodInner),
      tieRodOuter: snapshot(this.upright.tieRodOuter),
      wheelCentre: snapshot(this.wheel.centre),
    };
  }
}

/**
 * A double wishbone corner ready to be moved: closed forms from the turn of the lower arm, Newton's method for the
 * height of the wheel centre. Arms, kingpin and tie rod keep their lengths; bushes and joints have no give. Where the
 * upper arm or the tie rod could close in two ways, it stays on the design's side.
 *
 * `adjustment` leaves the wheel centre's design height, so that the answer is what is read after adjusting with the
 * height of the wheel centre over the chassis held.
 *
 * @throws CalcRefusal naming the hardpoint if the linkage cannot work, or cannot be assembled as adjusted
 */
export function doubleWishbone(
  hardpoints: WishboneHardpoints,
  adjustment: Adjustment<WishbonePoint> = {},
): Corner<WishboneJoint> {
  const points = pointsOf(hardpoints);
  requireWheel(hardpoints);
  requirePoints({ ...points });
  const now = shiftPoints(points, adjustment);
  const lower = armOf("lower arm", armPoints(points, "lower"), armPoints(now, "lower"));
  const upper = armOf("upper arm", armPoints(points, "upper"), armPoints(now, "upper"));
  const upright = new Upright({ lower: points.lowerJoint, upper: points.upperJoint }, points, adjustment);
  return new DoubleWishbone(hardpoints, now, { lower, upper }, upright);
}

function pointsOf(hardpoints: WishboneHardpoints): WishbonePoints {
  const {
    lowerArmFront,
    lowerArmRear,
    lowerJoint,
    upperArmFront,
    upperArmRear,
    upperJoint,
    tieRodInner,
    tieRodOuter,
  } = hardpoints;
  return {
    lowerArmFront: mutable(lowerArmFront),
    lowerArmRear: mutable(lowerArmRear),
    lowerJoint: mutable(lowerJoint),
    upperArmFront: mutable(upperArmFront),
    upperArmRear: mutable(upperArmRear),
    upperJoint: mutable(upperJoint),
    tieRodInner: mutable(tieRodInner),
    tieRodOuter: mutable(tieRodOuter),
  };
}

function armPoints(points: WishbonePoints, which: "lower" | "upper"): ArmPoints {
  return which === "lower"
    ? { front: points.lowerArmFront, rear: points.lowerArmRear, outer: points.lowerJoint }
    : { front: points.upperArmFront, rear: points.upperArmRear, outer: points.upperJoint };
}

/** The arm's own pivots with its joint as adjusted, on the chassis's pivots as shimmed. */
function armOf(place: string, design: ArmPoints, now: ArmPoints): Arm {
  return new Arm({ ...design, outer: now.outer }, now, place);
}

function upperBranch(hardpoints: WishboneHardpoints): -1 | 1 {
  const { circle } = armOf("upper arm", armPoints(hardpoints, "upper"), armPoints(hardpoints, "upper"));
  const branch = branchOf(circle, hardpoints.lowerJoint, hardpoints.upperJoint);
  if (branch !== 0) return branch;
  throw new CalcRefusal(
    "DEGENERATE_LINKAGE",
    "the upper arm stands at a dead centre in the design position: it lies in line with the kingpin",
    "upperJoint",
  );
}
