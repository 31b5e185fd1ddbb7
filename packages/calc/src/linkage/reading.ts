import { camberOf, castorOf, kingpinOf, toeInOf } from "../alignment/axis";
import type { Vector } from "../alignment/vector";
import type { Corner, HungBar, HungStrut } from "./corner";
import { centrePlaneHeight, type FrontPoint, finite } from "./front-view";
import { snapshot } from "./mount";
import { addScaled, cross, dot, mutable, normalise, subtract } from "./vector";
import { upright } from "./wheel";

/** What one corner shows at one position. SI; trade signs; angles against the chassis's own axes. */
export interface CornerReading {
  /** Rise of the wheel centre from the design position, m. */
  readonly bump: number;
  /** Shift of the rack along +y, m. */
  readonly rack: number;
  readonly camber: number;
  readonly toeIn: number;
  /** `null` where nothing steers; so are the next four. */
  readonly castor: number | null;
  readonly kingpin: number | null;
  /** Along the wheel's own axes: distance from the contact point inboard to the steering axis at the ground, m. */
  readonly scrub: number | null;
  /** Likewise, ahead of the contact point, m. */
  readonly trail: number | null;
  /** Steer of this wheel to the left per metre of rack, wheel centre's height held, rad/m. */
  readonly steerGain: number | null;
  /** Shift of the contact point outboard from the design position, m: this wheel's part of the track change. */
  readonly trackChange: number;
  /** Shift of the contact point forward from the design position, m. */
  readonly forwardShift: number;
  /** Change per metre of wheel-centre rise with the rack held: rad/m, rad/m, m/m. */
  readonly camberGain: number;
  readonly toeGain: number;
  readonly trackGain: number;
  /** Front-view instant centre, m; `null` at infinity. */
  readonly instantCentre: FrontPoint | null;
  /** From the contact point across to the instant centre, m; positive where it lies inboard. `null` at infinity. */
  readonly swingArm: number | null;
  /** Over the ground under this wheel, m; `null` where the line never meets the centre plane. */
  readonly rollCentreHeight: number | null;
  readonly wheelCentre: Vector;
  readonly contact: Vector;
  readonly spring: HungStrut | null;
  readonly damper: HungStrut | null;
  readonly bar: HungBar | null;
}

const contact = mutable();
const motion = mutable();
const spinChange = mutable();
const kingpinLine = mutable();
const offset = mutable();
const outboard = mutable();
const ahead = mutable();

/**
 * Reads a corner where it stands. `up` is the unit normal of the ground in the car's axes: contact, scrub, trail and
 * roll-centre height follow it when the car rolls; angles and shifts are always against the car's own axes.
 */
export function readCorner(corner: Corner, up: Vector = upright): CornerReading {
  const { wheel, mounts } = corner;
  wheel.contact(contact, up);
  corner.centreVelocity(motion);
  cross(spinChange, corner.bumpTurn, wheel.spin);
  const camberGain = camberRate(wheel.spin, spinChange);
  const toeGain = toeRate(wheel.spin, spinChange, wheel.sign);
  wheel.contactVelocity(motion, { move: motion, turn: corner.bumpTurn, up });
  const centre = corner.instantCentre();
  const instantCentre = finite(centre);
  return {
    bump: corner.bump,
    rack: corner.rack,
    camber: camberOf(wheel.spin),
    toeIn: toeInOf(wheel.spin, wheel.side),
    ...readSteering(corner, up),
    trackChange: wheel.sign * (contact.y - wheel.designContact.y),
    forwardShift: contact.x - wheel.designContact.x,
    camberGain,
    toeGain,
    trackGain: wheel.sign * motion.y,
    instantCentre,
    swingArm: instantCentre === null ? null : wheel.sign * (contact.y - instantCentre.y),
    rollCentreHeight: heightOver(contact, centrePlaneHeight(contact, centre), up),
    wheelCentre: snapshot(wheel.centre),
    contact: snapshot(contact),
    spring: mounts.spring(),
    damper: mounts.damper(),
    bar: mounts.bar(),
  };
}

/** Height over the ground through `contact` of the point of the centre plane at `z`. */
function heightOver(contact: Vector, z: number | null, up: Vector): number | null {
  return z === null ? null : (z - contact.z) * up.z - contact.y * up.y;
}

type SteeringReading = Pick<CornerReading, "castor" | "kingpin" | "scrub" | "trail" | "steerGain">;

function readSteering({ steeringAxis, wheel, rackTurn, steered }: Corner, up: Vector): SteeringReading {
  if (steeringAxis === null)
    return { castor: null, kingpin: null, scrub: null, trail: null, steerGain: null };
  subtract(kingpinLine, steeringAxis.upper, steeringAxis.lower);
  cross(spinChange, rackTurn, wheel.spin);
  subtract(offset, contact, steeringAxis.lower);
  addScaled(offset, offset, kingpinLine, -dot(offset, up) / dot(kingpinLine, up));
  // From the steering axis to the contact point on the ground; the wheel's own axes there are outboard and ahead.
  addScaled(outboard, wheel.spin, up, -dot(wheel.spin, up));
  normalise(outboard);
  cross(ahead, outboard, up);
  return {
    castor: castorOf(kingpinLine),
    kingpin: kingpinOf(kingpinLine, wheel.side),
    scrub: dot(offset, outboard),
    trail: 0 - wheel.sign * dot(offset, ahead),
    steerGain: steered ? 0 - wheel.sign * toeRate(wheel.spin, spinChange, wheel.sign) : null,
  };
}

/** Derivative of camber while the spin axis changes by `change`. */
function camberRate(spin: Vector, change: Vector): number {
  return -change.z / Math.sqrt(1 - spin.z * spin.z);
}

/** Derivative of toe-in. */
function toeRate(spin: Vector, change: Vector, sign: number): number {
  return (sign * (change.x * spin.y - spin.x * change.y)) / (spin.x * spin.x + spin.y * spin.y);
}
