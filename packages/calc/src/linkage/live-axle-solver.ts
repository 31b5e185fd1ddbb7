import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import {
  type AxlePose,
  type Condition,
  coordinateCondition,
  rodCondition,
  type ThreeLinks,
  type TorqueTube,
  wattConditions,
} from "./axle-location";
import type { Body } from "./body";
import type { HungMounts } from "./corner";
import { solveLinear } from "./linear";
import type { LiveAxleHardpoints } from "./live-axle";
import { hang } from "./mount";
import { Pose, Twist } from "./pose";
import { addScaled, copy, length, type MutableVector, midpoint, mutable } from "./vector";
import { Wheel } from "./wheel";

const mostSteps = 40;
const closeEnough = 1e-12;
/** Longest turn of one step, rad; a longer one is cut. */
const longestTurn = 0.25;
const skyward: Vector = { x: 0, y: 0, z: 1 };
const shift = mutable();
const turn = mutable();

/**
 * A live axle ready to be moved: six unknowns (seven with a Watt linkage's bellcrank) by Newton's method, always from
 * the design position, so that the answer does not depend on where the axle was before.
 */
export class LiveAxle implements Body {
  readonly left: Wheel;
  readonly right: Wheel;
  readonly mounts: { readonly left: HungMounts; readonly right: HungMounts };
  /** Motion per metre of rise of one wheel centre, the other's height held. */
  readonly twist = { left: new Twist(), right: new Twist() };
  /** The motion that springs and dampers are read for. */
  readonly motion = new Twist();
  bumpLeft = 0;
  bumpRight = 0;
  private readonly middle: Vector;
  private readonly axle: AxlePose = { pose: new Pose(), at: mutable(), bellcrank: 0 };
  private readonly conditions: readonly Condition[];
  private readonly wanted = { left: 0, right: 0 };

  constructor(hardpoints: LiveAxleHardpoints) {
    this.left = new Wheel({ ...hardpoints.left, side: "left" });
    this.right = new Wheel({ ...hardpoints.right, side: "right" });
    this.middle = midpoint(this.left.designCentre, this.right.designCentre);
    const { wanted } = this;
    this.conditions = [
      coordinateCondition(this.left.designCentre, skyward, () => wanted.left),
      coordinateCondition(this.right.designCentre, skyward, () => wanted.right),
      ...locating(hardpoints.location),
      ...(hardpoints.lateral.kind === "panhard"
        ? [rodCondition(hardpoints.lateral)]
        : wattConditions(hardpoints.lateral)),
    ];
    this.mounts = {
      left: hang(hardpoints.left, { axle: this }),
      right: hang(hardpoints.right, { axle: this }),
    };
    this.moveTo(0, 0);
  }

  /**
   * Puts the wheel centres to their rises from the design position, metres.
   * @throws CalcRefusal where the axle cannot reach, saying how far on the way it gets
   */
  moveTo(bumpLeft: number, bumpRight: number): void {
    if (!Number.isFinite(bumpLeft) || !Number.isFinite(bumpRight)) {
      throw new RangeError(`travel must be finite numbers of metres, but is ${bumpLeft} and ${bumpRight}`);
    }
    if (!this.solve(bumpLeft, bumpRight)) throw this.refusal(bumpLeft, bumpRight);
    this.bumpLeft = bumpLeft;
    this.bumpRight = bumpRight;
    for (const wheel of [this.left, this.right]) {
      this.axle.pose.place(wheel.centre, wheel.designCentre);
      this.axle.pose.turn(wheel.spin, wheel.designSpin);
    }
  }

  /** The middle between the wheel centres, now. */
  get at(): Vector {
    return this.axle.at;
  }

  /** Sets the motion that mounts are read for: rises per unit of the two wheel centres. */
  moveBy(riseLeft: number, riseRight: number): void {
    copy(this.motion.at, this.axle.at);
    this.motion.scale(0);
    this.motion.add(this.twist.left, riseLeft);
    this.motion.add(this.twist.right, riseRight);
  }

  attach(design: Vector): Vector {
    return { ...design };
  }

  locate(out: MutableVector, attached: Vector): void {
    this.axle.pose.place(out, attached);
  }

  velocity(out: MutableVector, point: Vector): void {
    this.motion.velocity(out, point);
  }

  private solve(bumpLeft: number, bumpRight: number): boolean {
    this.axle.pose.reset(this.middle);
    copy(this.axle.at, this.middle);
    this.axle.bellcrank = 0;
    this.wanted.left = this.left.designCentre.z + bumpLeft;
    this.wanted.right = this.right.designCentre.z + bumpRight;
    let met = false;
    for (let count = 0; count < mostSteps; count += 1) {
      const { matrix, misses } = this.measure();
      if (met) return this.differentiate(matrix);
      // One step more once it is met: it costs little and takes the answer down to rounding.
      met = misses.every((miss) => Math.abs(miss) <= closeEnough);
      const sides = misses.map((miss) => [-miss]);
      if (!solveLinear(matrix, sides)) return false;
      this.step(sides.map(([value]) => value ?? Number.NaN));
    }
    return false;
  }

  private measure(): { matrix: number[][]; misses: number[] } {
    const matrix = this.conditions.map(() => this.conditions.map(() => 0));
    const misses = this.conditions.map((condition, index) =>
      condition.measure(this.axle, matrix[index] ?? []),
    );
    return { matrix, misses };
  }

  private step([x = 0, y = 0, z = 0, rx = 0, ry = 0, rz = 0, bell = 0]: readonly number[]): void {
    copy(shift, { x, y, z });
    copy(turn, { x: rx, y: ry, z: rz });
    const factor = Math.min(1, longestTurn / Math.max(length(turn), Math.abs(bell), 1e-300));
    addScaled(shift, shift, shift, factor - 1);
    addScaled(turn, turn, turn, factor - 1);
    this.axle.pose.nudge(shift, turn);
    this.axle.pose.place(this.axle.at, this.middle);
    this.axle.bellcrank += bell * factor;
  }

  private differentiate(matrix: number[][]): boolean {
    const sides = matrix.map((_, row) => [row === 0 ? 1 : 0, row === 1 ? 1 : 0]);
    if (!solveLinear(matrix, sides)) return false;
    for (const [column, twist] of [this.twist.left, this.twist.right].entries()) {
      const [x = 0, y = 0, z = 0, rx = 0, ry = 0, rz = 0] = sides.map((side) => side[column] ?? 0);
      copy(twist.at, this.axle.at);
      copy(twist.move, { x, y, z });
      copy(twist.turn, { x: rx, y: ry, z: rz });
    }
    return true;
  }

  private refusal(bumpLeft: number, bumpRight: number): CalcRefusal {
    const mm = (metres: number): string => `${(metres * 1000).toFixed(1)} mm`;
    if (!this.solve(0, 0)) {
      return new CalcRefusal(
        "DEGENERATE_LINKAGE",
        "the axle is not held: its links stand so that it could move freely, or bind, in the design position",
        "location",
      );
    }
    let inside = 0;
    let outside = 1;
    for (let count = 0; count < 30; count += 1) {
      const part = (inside + outside) / 2;
      if (this.solve(bumpLeft * part, bumpRight * part)) inside = part;
      else outside = part;
    }
    return new CalcRefusal(
      "OUT_OF_REACH",
      `the axle cannot reach ${mm(bumpLeft)} left and ${mm(bumpRight)} right: on the way there it reaches ${mm(bumpLeft * inside)} and ${mm(bumpRight * inside)}`,
      "bump",
    );
  }
}

function locating(location: ThreeLinks | TorqueTube): Condition[] {
  if (location.kind === "three-link") return location.links.map(rodCondition);
  const { ball } = location;
  return [
    coordinateCondition(ball, { x: 1, y: 0, z: 0 }, () => ball.x),
    coordinateCondition(ball, { x: 0, y: 1, z: 0 }, () => ball.y),
    coordinateCondition(ball, { x: 0, y: 0, z: 1 }, () => ball.z),
  ];
}
