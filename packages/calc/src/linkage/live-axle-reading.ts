import { camberOf, toeInOf } from "../alignment/axis";
import { thrustAngle } from "../alignment/axle-line";
import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import type { HungBar, HungMounts } from "./corner";
import { groundUnder } from "./ground";
import type { LiveAxle } from "./live-axle-solver";
import { snapshot } from "./mount";
import { secant } from "./secant";
import { dot, mutable, subtract } from "./vector";
import type { Wheel } from "./wheel";

/** What a spring or damper on a live axle answers: shortening per metre of this side's wheel-centre rise. */
export interface AxleStrut {
  readonly length: number;
  /** Both wheels rising together. */
  readonly bumpRatio: number;
  /** The other wheel falling as much. */
  readonly rollRatio: number;
}

/** One end of a live axle. SI; trade signs; against the car's own axes. */
export interface AxleEndReading {
  readonly camber: number;
  readonly toeIn: number;
  /** Contact point outboard from the design position, m. */
  readonly trackChange: number;
  /** Contact point forward from the design position, m. */
  readonly forwardShift: number;
  readonly wheelCentre: Vector;
  readonly contact: Vector;
  readonly spring: AxleStrut | null;
  readonly damper: AxleStrut | null;
  /** Ratio with both wheels rising; the bar itself only twists in roll. */
  readonly bar: HungBar | null;
  /** Movement of the bar's arm per metre of rise, the other wheel falling as much. */
  readonly barRollRatio: number | null;
}

/** What a live axle shows at one position. */
export interface LiveAxleReading {
  readonly left: AxleEndReading;
  readonly right: AxleEndReading;
  /** Roll of the car against the ground, rad, positive with the left side up (ISO 8855). */
  readonly roll: number;
  /** Middle of the axle to the left of its design position, m. */
  readonly lateralShift: number;
  /** Heading of the axle, rad, positive to the right (thrust angle). */
  readonly thrust: number;
  /** Steer of the axle to the left per radian that the car rolls left side up, rad/rad. */
  readonly rollSteer: number;
  /**
   * Over the ground at the centre plane, m: where the axle, rolling with equal and opposite rises, does not move
   * sideways under the car. `null` if it does not roll at all.
   */
  readonly rollCentreHeight: number | null;
}

const centre = mutable();

/** Reads a live axle where it stands. */
export function readLiveAxle(axle: LiveAxle): LiveAxleReading {
  const { up, left, right } = groundUnder(axle.left, axle.right);
  const ends = { left: readEnd(axle, "left", left), right: readEnd(axle, "right", right) };
  // The car rolls left side up when the left wheel falls and the right one rises.
  axle.moveBy(-1, 1);
  const { turn, move } = axle.motion;
  const height = axle.at.z + move.y / turn.x;
  subtract(centre, { x: axle.at.x, y: 0, z: height }, left);
  const rolls = Math.abs(turn.x) > 1e-9;
  return {
    ...ends,
    roll: Math.atan2(up.y, up.z),
    lateralShift: axle.at.y - (axle.left.designCentre.y + axle.right.designCentre.y) / 2,
    thrust: thrustAngle({ left: ends.left.toeIn, right: ends.right.toeIn }),
    rollSteer: rolls ? -turn.z / turn.x : 0,
    rollCentreHeight: rolls ? dot(centre, up) : null,
  };
}

/**
 * Puts a live axle to a mean travel (m) and a roll of the car (rad, left side up), with equal and opposite travel about
 * the mean.
 * @throws CalcRefusal where the axle does not reach
 */
export function rollLiveAxle(
  axle: LiveAxle,
  { heave = 0, roll = 0 }: { heave?: number; roll?: number },
): void {
  if (!(Math.abs(roll) < Math.PI / 4)) throw new RangeError(`roll must lie within ±45°, but is ${roll} rad`);
  const first = ((axle.left.designCentre.y - axle.right.designCentre.y) / 2) * Math.tan(roll);
  const found = secant(
    (travel) => {
      axle.moveTo(heave - travel, heave + travel);
      const { up } = groundUnder(axle.left, axle.right);
      return Math.atan2(up.y, up.z) - roll;
    },
    { first, second: first + 1e-3, close: 1e-12 },
  );
  if (found !== null) return;
  throw new CalcRefusal(
    "NO_GROUND",
    `no equal and opposite travel gives the car a roll of ${roll} rad`,
    "roll",
  );
}

function readEnd(axle: LiveAxle, side: "left" | "right", contact: Vector): AxleEndReading {
  const wheel: Wheel = axle[side];
  const mounts = axle.mounts[side];
  axle.moveBy(1, 1);
  const bump = readMounts(mounts);
  axle.moveBy(side === "left" ? 1 : -1, side === "left" ? -1 : 1);
  const roll = readMounts(mounts);
  return {
    camber: camberOf(wheel.spin),
    toeIn: toeInOf(wheel.spin, wheel.side),
    trackChange: wheel.sign * (contact.y - wheel.designContact.y),
    forwardShift: contact.x - wheel.designContact.x,
    wheelCentre: snapshot(wheel.centre),
    contact: snapshot(contact),
    spring: both(bump.spring, roll.spring),
    damper: both(bump.damper, roll.damper),
    bar: bump.bar,
    barRollRatio: roll.bar?.ratio ?? null,
  };
}

function readMounts(mounts: HungMounts): { spring: Hung; damper: Hung; bar: HungBar | null } {
  return { spring: mounts.spring(), damper: mounts.damper(), bar: mounts.bar() };
}
type Hung = ReturnType<HungMounts["spring"]>;

function both(bump: Hung, roll: Hung): AxleStrut | null {
  if (bump === null || roll === null) return null;
  return { length: bump.length, bumpRatio: bump.ratio, rollRatio: roll.ratio };
}
