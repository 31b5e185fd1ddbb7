import { camberOf } from "../alignment/axis";
import { CalcRefusal } from "../catalogue/refusal";
import type { Corner } from "./corner";
import type { FrontPoint } from "./front-view";
import { upAt } from "./ground";
import { type CornerReading, readCorner } from "./reading";
import { secant } from "./secant";
import { dot, mutable, subtract } from "./vector";

/** Both corners of an axle with independent suspension. */
export interface AxleCorners {
  readonly left: Corner;
  readonly right: Corner;
}

/** Where the car stands over an axle. Left out: 0. */
export interface AxlePosition {
  /** Mean rise of the wheel centres from the design position, m. */
  readonly heave?: number;
  /** Roll of the car against the ground, rad, positive with the left side up (ISO 8855). */
  readonly roll?: number;
  /** Shift of the rack along +y, m. */
  readonly rack?: number;
}

/** What an axle shows at one position. SI; trade signs. */
export interface AxleReading {
  /** Angles against the car; contact, scrub, trail and roll-centre height with the ground as it stands. */
  readonly left: CornerReading;
  readonly right: CornerReading;
  readonly roll: number;
  /** Camber against the ground, rad. */
  readonly leftCamberToGround: number;
  readonly rightCamberToGround: number;
  readonly totalToe: number;
  /** Between the contact points along the ground, m. */
  readonly track: number;
  /** Mean shift of the contact points forward from the design position, m. */
  readonly forwardShift: number;
  /**
   * Where the two lines from contact point to instant centre meet: y in the car, height over the ground, m. In roll it
   * leaves the centre plane. `null` where they are parallel or the same line.
   */
  readonly rollCentre: { readonly y: number; readonly height: number } | null;
}

/** Metres of height between the two contact points. */
const closeEnough = 1e-12;

/**
 * Puts both corners to a position and reads them. In roll the wheel centres travel equally and oppositely about the
 * heave, by as much as makes the ground under both contact points slope by exactly the roll.
 * @throws CalcRefusal where a corner does not reach
 */
export function readAxle(
  axle: AxleCorners,
  { heave = 0, roll = 0, rack = 0 }: AxlePosition = {},
): AxleReading {
  if (!(Math.abs(roll) < Math.PI / 4)) throw new RangeError(`roll must lie within ±45°, but is ${roll} rad`);
  const up = upAt(roll);
  settle(axle, { heave, roll, rack });
  const left = readCorner(axle.left, up);
  const right = readCorner(axle.right, up);
  return {
    left,
    right,
    roll,
    leftCamberToGround: camberToGround(axle.left, roll),
    rightCamberToGround: camberToGround(axle.right, roll),
    totalToe: left.toeIn + right.toeIn,
    track: (left.contact.y - right.contact.y) * up.z - (left.contact.z - right.contact.z) * up.y,
    forwardShift: (left.forwardShift + right.forwardShift) / 2,
    rollCentre: rollCentreOf(axle, left, { right, up }),
  };
}

/** Finds the opposite travel, which is nearly half the track times the slope. */
function settle({ left, right }: AxleCorners, { heave, roll, rack }: Required<AxlePosition>): void {
  const up = upAt(roll);
  const a = mutable();
  const b = mutable();
  const height = (travel: number): number => {
    left.moveTo(heave - travel, rack);
    right.moveTo(heave + travel, rack);
    left.wheel.contact(a, up);
    right.wheel.contact(b, up);
    subtract(a, a, b);
    return dot(a, up);
  };
  const first = ((left.wheel.designCentre.y - right.wheel.designCentre.y) / 2) * Math.tan(roll);
  // A millimetre on is near enough for a second guess; the function is all but straight.
  if (secant(height, { first, second: first + 1e-3, close: closeEnough }) !== null) return;
  throw new CalcRefusal(
    "NO_GROUND",
    `no equal and opposite travel stands the wheels on ground that slopes ${roll} rad`,
    "roll",
  );
}

/** The spin axis seen from the ground: the car's roll leans both wheels with it. */
function camberToGround({ wheel: { spin } }: Corner, roll: number): number {
  const cosine = Math.cos(roll);
  const sine = Math.sin(roll);
  return camberOf({ x: spin.x, y: spin.y * cosine - spin.z * sine, z: spin.y * sine + spin.z * cosine });
}

function rollCentreOf(
  axle: AxleCorners,
  left: CornerReading,
  { right, up }: { right: CornerReading; up: { y: number; z: number } },
): AxleReading["rollCentre"] {
  const p = lineTo(axle.left, left.contact);
  const q = lineTo(axle.right, right.contact);
  const w = p.a * q.b - p.b * q.a;
  const sizes = Math.hypot(p.a, p.b) * Math.hypot(q.a, q.b);
  if (!(Math.abs(w) > 1e-9 * sizes)) return null;
  const y = (p.b * q.c - p.c * q.b) / w;
  const z = (p.c * q.a - p.a * q.c) / w;
  return { y, height: (y - left.contact.y) * up.y + (z - left.contact.z) * up.z };
}

/** The front-view line from a contact point to the instant centre of its corner; sets the corner's own state aside. */
function lineTo(corner: Corner, contact: FrontPoint): { a: number; b: number; c: number } {
  const centre = corner.instantCentre();
  return {
    a: contact.z * centre.w - centre.z,
    b: centre.y - contact.y * centre.w,
    c: contact.y * centre.z - contact.z * centre.y,
  };
}
