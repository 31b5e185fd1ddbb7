import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import type { Body } from "./body";
import { branchOf, type Circle, meetSphere } from "./circle";
import type { Adjustment, TieRod } from "./hardpoint";
import { Pose, Triad, Twist } from "./pose";
import { addScaled, copy, cross, distance, dot, type MutableVector, mutable, plus, subtract } from "./vector";

const designTriad = new Triad();
const presentTriad = new Triad();
const rows = [0, 1, 2].map(() => ({ rod: mutable(), moment: mutable(), other: mutable() }));
const [first, second, third] = rows as [Row, Row, Row];
const armOut = mutable();
interface Row {
  /** Direction in which the constraint holds. */
  readonly rod: MutableVector;
  /** Arm × rod: its weight per unit of turn. */
  readonly moment: MutableVector;
  /** Product of the other two moments, for Cramer's rule. */
  readonly other: MutableVector;
}

/**
 * The upright of a steered corner (or of one with a toe link): carried at a lower joint and at a point above it, and
 * held about the line through both by the tie rod.
 */
export class Upright implements Body {
  readonly pose = new Pose();
  /** Motion per radian of the lower arm while solving; afterwards per metre of wheel-centre rise, rack held. */
  readonly bumpTwist = new Twist();
  /** Motion per metre of rack; afterwards with the wheel centre's height held. */
  readonly rackTwist = new Twist();
  readonly tieRodOuter = mutable();
  readonly tieRodInner: MutableVector;
  private readonly tieInnerDesign: Vector;
  private readonly tieOuterDesign: Vector;
  private readonly lowerDesign: Vector;
  private readonly tieCircle: Circle = { centre: mutable(), axis: mutable(), radius: 0 };
  private readonly tieSphere: { readonly centre: Vector; readonly reach: number; readonly branch: number };

  constructor(
    joints: { readonly lower: Vector; readonly upper: Vector },
    { tieRodInner, tieRodOuter }: TieRod,
    adjustment: Adjustment<"tieRodInner" | "tieRodOuter">,
  ) {
    this.lowerDesign = joints.lower;
    this.tieOuterDesign = plus(tieRodOuter, adjustment.shift?.tieRodOuter ?? mutable());
    this.tieInnerDesign = plus(tieRodInner, adjustment.shift?.tieRodInner ?? mutable());
    this.tieRodInner = mutable(this.tieInnerDesign);
    const reach = distance(tieRodOuter, tieRodInner) + (adjustment.tieRod ?? 0);
    if (!(reach > 0))
      throw new CalcRefusal("DEGENERATE_LINKAGE", `the tie rod would be ${reach} m long`, "tieRod");
    this.layTieCircle(joints.lower, joints.upper, joints.lower, joints.upper);
    const branch = branchOf(this.tieCircle, tieRodInner, tieRodOuter);
    if (branch === 0) {
      throw new CalcRefusal(
        "DEGENERATE_LINKAGE",
        "the tie rod stands at a dead centre in the design position: its ends and the steering axis lie in one plane",
        "tieRodOuter",
      );
    }
    this.tieSphere = { centre: this.tieRodInner, reach, branch };
  }

  /** Shifts the tie rod's inner end by `rack` (m, along +y) from its design position. */
  shiftRack(rack: number): void {
    this.tieRodInner.y = this.tieInnerDesign.y + rack;
  }

  /**
   * Finds the pose with the lower joint at `lower` and the upright's point `upperDesign` at `upper`.
   * Answers false if the tie rod does not reach.
   */
  settle(lower: Vector, upperDesign: Vector, upper: Vector): boolean {
    this.layTieCircle(this.lowerDesign, upperDesign, lower, upper);
    if (!meetSphere(this.tieRodOuter, this.tieCircle, this.tieSphere)) return false;
    presentTriad.lay(lower, upper, this.tieRodOuter);
    this.pose.fit(designTriad, presentTriad);
    return true;
  }

  /**
   * Sets both twists from the lower joint's velocity per radian of its arm, and from two directions in which the point
   * `upper` of the upright cannot move. Answers false at a dead centre.
   */
  differentiate(
    lower: { at: Vector; velocity: Vector },
    upper: { at: Vector; fixed: readonly [Vector, Vector] },
  ): boolean {
    subtract(armOut, upper.at, lower.at);
    this.lay(first, upper.fixed[0]);
    this.lay(second, upper.fixed[1]);
    subtract(armOut, this.tieRodOuter, lower.at);
    subtract(third.rod, this.tieRodOuter, this.tieRodInner);
    this.lay(third, third.rod);
    cross(first.other, second.moment, third.moment);
    cross(second.other, third.moment, first.moment);
    cross(third.other, first.moment, second.moment);
    const determinant = dot(first.moment, first.other);
    if (!(Math.abs(determinant) > 1e-14)) return false;
    this.turnBy(lower.at, lower.velocity, determinant);
    return true;
  }

  /** From "per radian of the arm" to "per metre of wheel-centre rise"; `rise` is the wheel centre's rise per radian. */
  perMetre(rise: number, centre: Vector): void {
    this.bumpTwist.scale(1 / rise);
    this.rackTwist.velocity(armOut, centre);
    this.rackTwist.add(this.bumpTwist, -armOut.z);
  }

  attach(design: Vector): Vector {
    return mutable(design);
  }

  locate(out: MutableVector, attached: Vector): void {
    this.pose.place(out, attached);
  }

  velocity(out: MutableVector, point: Vector): void {
    this.bumpTwist.velocity(out, point);
  }

  private layTieCircle(lowerDesign: Vector, upperDesign: Vector, lower: Vector, upper: Vector): void {
    designTriad.lay(lowerDesign, upperDesign, this.tieOuterDesign);
    subtract(armOut, this.tieOuterDesign, lowerDesign);
    const { centre, axis } = this.tieCircle;
    subtract(axis, upper, lower);
    addScaled(axis, axis, axis, 1 / distance(upper, lower) - 1);
    addScaled(centre, lower, axis, dot(armOut, designTriad.first));
    this.tieCircle.radius = dot(armOut, designTriad.second);
  }

  private lay(row: Row, direction: Vector): void {
    copy(row.rod, direction);
    cross(row.moment, armOut, row.rod);
  }

  private turnBy(at: Vector, velocity: Vector, determinant: number): void {
    const { bumpTwist, rackTwist } = this;
    copy(bumpTwist.at, at);
    copy(rackTwist.at, at);
    copy(bumpTwist.move, velocity);
    copy(rackTwist.move, noVelocity);
    copy(bumpTwist.turn, noVelocity);
    for (const row of [first, second, third]) {
      addScaled(bumpTwist.turn, bumpTwist.turn, row.other, -dot(velocity, row.rod) / determinant);
    }
    copy(rackTwist.turn, noVelocity);
    addScaled(rackTwist.turn, noVelocity, third.other, third.rod.y / determinant);
  }
}

const noVelocity: Vector = mutable();
