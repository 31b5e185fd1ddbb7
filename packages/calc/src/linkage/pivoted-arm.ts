import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import { Arm } from "./arm";
import type { Corner, HungMounts } from "./corner";
import type { HomogeneousPoint } from "./front-view";
import {
  type Adjustment,
  type Mounts,
  requirePoints,
  requireWheel,
  shiftPoints,
  type WheelHardpoints,
} from "./hardpoint";
import { hang, snapshot } from "./mount";
import { outOfReach, type Reach } from "./reach";
import { addScaled, type MutableVector, mutable, plus, subtract } from "./vector";
import { Wheel } from "./wheel";

const still: Vector = mutable();

/** A wheel rigidly on one arm that turns about a fixed line: swing axle, trailing and semi-trailing arm. */
class PivotedArm implements Corner<"wheelCentre"> {
  readonly steeringAxis = null;
  readonly steered = false;
  readonly rack = 0;
  readonly rackTurn = still;
  readonly bumpTurn = mutable();
  readonly mounts: HungMounts;
  readonly wheel: Wheel;
  bump = 0;
  private readonly spinTip: Vector;
  private readonly centreAttached: Vector;
  private readonly swing: { readonly middle: number; readonly radius: number; readonly phase: number };

  constructor(
    hardpoints: WheelHardpoints & Mounts<"arm">,
    readonly upright: Arm,
  ) {
    this.wheel = new Wheel(hardpoints);
    this.centreAttached = upright.attach(this.wheel.designCentre);
    this.spinTip = upright.attach(plus(this.wheel.designCentre, this.wheel.designSpin));
    this.swing = upright.heightSwing();
    if (!(this.swing.radius > 1e-3)) {
      throw new CalcRefusal(
        "DEGENERATE_LINKAGE",
        "the arm cannot work: its pivot line stands upright",
        "pivots",
      );
    }
    this.mounts = hang(hardpoints, { arm: upright });
    this.moveTo(0);
  }

  /** Closed form: the wheel centre's height is middle + radius·cos(angle − phase). */
  moveTo(bump: number, rack = 0): void {
    if (!Number.isFinite(bump))
      throw new RangeError(`travel must be a finite number of metres, but is ${bump}`);
    if (rack !== 0) throw new RangeError(`this linkage does not steer, so the rack cannot be at ${rack} m`);
    const { middle, radius, phase } = this.swing;
    const cosine = (this.wheel.designCentre.z + bump - middle) / radius;
    // At the very top or bottom the wheel centre moves level, and nothing is told per metre of rise.
    if (!(Math.abs(cosine) < 1 - 1e-9)) throw outOfReach({ bump, rack }, this.reach());
    const turn = Math.acos(cosine);
    this.upright.turnTo(phase >= 0 ? phase - turn : phase + turn);
    this.upright.rate = 1 / (radius * Math.sin(turn) * (phase >= 0 ? 1 : -1));
    this.bump = bump;
    this.settle();
  }

  reach(): Reach {
    const { middle, radius } = this.swing;
    const height = this.wheel.designCentre.z;
    return { bump: middle + radius - height, droop: middle - radius - height };
  }

  centreVelocity(out: MutableVector): void {
    this.upright.velocity(out, this.wheel.centre);
  }

  instantCentre(): HomogeneousPoint {
    const { axis, centre } = this.upright.circle;
    const ahead = this.wheel.centre.x - centre.x;
    const w = Math.abs(axis.x) > 1e-9 ? axis.x : 0;
    return { y: centre.y * w + ahead * axis.y, z: centre.z * w + ahead * axis.z, w };
  }

  joints(): Readonly<Record<"wheelCentre", Vector>> {
    return { wheelCentre: snapshot(this.wheel.centre) };
  }

  private settle(): void {
    const { upright, wheel, bumpTurn } = this;
    upright.locate(wheel.centre, this.centreAttached);
    upright.locate(wheel.spin, this.spinTip);
    subtract(wheel.spin, wheel.spin, wheel.centre);
    addScaled(bumpTurn, still, upright.circle.axis, upright.rate);
  }
}

/** A swing axle in the design position, metres. */
export interface SwingAxlePoints {
  /** Centre of the inner universal joint, or the front of a longitudinal pivot. */
  readonly joint: Vector;
  /** The chassis end of the radius arm, or the rear of a longitudinal pivot: second point of the line it swings about. */
  readonly radiusArm: Vector;
}
/** What may be adjusted of a swing axle: its pivots on the chassis, and the radius arm's front end screwed in or out of the arm. */
export type SwingAxlePoint = keyof SwingAxlePoints | "radiusArmEye";
/** A half axle that swings about the line through its inner joint and its radius arm's pivot. */
export interface SwingAxleHardpoints extends WheelHardpoints, SwingAxlePoints, Mounts<"arm"> {}

/** A trailing or semi-trailing arm in the design position, metres. */
export interface SemiTrailingPoints {
  readonly pivotInner: Vector;
  readonly pivotOuter: Vector;
}
/** What may be adjusted of a trailing arm: its pivots on the chassis, and the eyes that are screwed into the arm's ends. */
export type SemiTrailingPoint = keyof SemiTrailingPoints | "pivotInnerEye" | "pivotOuterEye";
/** An arm on two pivots ahead of the wheel. */
export interface SemiTrailingHardpoints extends WheelHardpoints, SemiTrailingPoints, Mounts<"arm"> {}

/**
 * A swing axle corner ready to be moved, in closed form. The plunge of the drive shaft has no part in it. A shift of
 * `radiusArm` moves the pivot on the chassis, one of `radiusArmEye` the end of the arm that sits on it.
 * @throws CalcRefusal naming the hardpoint if it cannot work, or cannot be assembled as adjusted
 */
export function swingAxle(
  hardpoints: SwingAxleHardpoints,
  adjustment: Adjustment<SwingAxlePoint> = {},
): Corner<"wheelCentre"> {
  const { joint, radiusArm } = hardpoints;
  const points = { joint, radiusArm, radiusArmEye: radiusArm };
  return pivoted(hardpoints, points, {
    adjustment,
    pivots: ["joint", "radiusArm"],
    eyes: [null, "radiusArmEye"],
  });
}

/**
 * A trailing or semi-trailing arm corner ready to be moved, in closed form. With the pivots square across the car it
 * is a pure trailing arm, whose instant centre lies at infinity. A shift of a pivot moves it on the chassis, one of its eye
 * moves the end of the arm that sits on it.
 * @throws CalcRefusal naming the hardpoint if it cannot work, or cannot be assembled as adjusted
 */
export function semiTrailingArm(
  hardpoints: SemiTrailingHardpoints,
  adjustment: Adjustment<SemiTrailingPoint> = {},
): Corner<"wheelCentre"> {
  const { pivotInner, pivotOuter } = hardpoints;
  const points = { pivotInner, pivotOuter, pivotInnerEye: pivotInner, pivotOuterEye: pivotOuter };
  return pivoted(hardpoints, points, {
    adjustment,
    pivots: ["pivotInner", "pivotOuter"],
    eyes: ["pivotInnerEye", "pivotOuterEye"],
  });
}

interface PivotedHow<Point extends string> {
  readonly adjustment: Adjustment<Point>;
  /** The pivots on the chassis, front and rear (or inner and outer) of the line it turns about. */
  readonly pivots: readonly [Point, Point];
  /** The arm's own end on each of them, where that can be adjusted. */
  readonly eyes: readonly [Point | null, Point | null];
}

function pivoted<Point extends string>(
  hardpoints: WheelHardpoints & Mounts<"arm">,
  points: Readonly<Record<Point, Vector>>,
  { adjustment, pivots: [front, rear], eyes: [frontEye, rearEye] }: PivotedHow<Point>,
): Corner<"wheelCentre"> {
  requireWheel(hardpoints);
  requirePoints(points);
  const now = shiftPoints<Readonly<Record<Point, Vector>>>(points, adjustment);
  const shape = {
    front: frontEye === null ? points[front] : now[frontEye],
    rear: rearEye === null ? points[rear] : now[rearEye],
    outer: hardpoints.wheelCentre,
  };
  return new PivotedArm(hardpoints, new Arm(shape, { front: now[front], rear: now[rear] }, "arm"));
}
