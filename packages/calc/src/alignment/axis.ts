import { requireFinite, type Side, sideSign, type Vector } from "./vector";

/** Angles of one wheel, radians, in trade signs (conventions of the calculator). */
export interface WheelAngles {
  /** Positive with the top leaning out. */
  readonly camber: number;
  /** Of this wheel alone; positive with the front edge turned in. */
  readonly toeIn: number;
  readonly side: Side;
}

/** Angles of one steering axis, radians, in trade signs. */
export interface SteeringAngles {
  /** Positive with the top of the axis rearwards; seen from the side. */
  readonly castor: number;
  /** Positive with the top of the axis inboard; seen from the front. */
  readonly kingpin: number;
  readonly side: Side;
}

/**
 * Camber in radians of a wheel whose spin axis points outboard along `spin` (any length), positive with the top
 * leaning out. Measured against the vertical of the axes `spin` is given in.
 *
 * Source: ISO 8855:2011, 7.1 (sign from memory).
 * @throws RangeError if the vector has no length or is not finite
 */
export function camberOf(spin: Vector): number {
  return 0 - Math.asin(unitOf(spin).z);
}

/**
 * Toe-in of one wheel in radians, positive with the front edge turned in, from its outboard spin axis. It is the
 * angle of the wheel's horizontal diameter to the car's x axis, so camber does not disturb it.
 *
 * Source: ISO 8855:2011, 7.1.3 to 7.1.7.
 * @throws RangeError if the vector has no length or is not finite
 */
export function toeInOf(spin: Vector, side: Side): number {
  const unit = unitOf(spin);
  return Math.atan2(unit.x, sideSign(side) * unit.y);
}

/** The unit spin axis, pointing outboard, of a wheel that stands at these angles; undoes `camberOf` and `toeInOf`. */
export function spinAxisOf({ camber, toeIn, side }: WheelAngles): Vector {
  requireFinite({ camber, toeIn });
  return {
    x: Math.sin(toeIn) * Math.cos(camber),
    y: sideSign(side) * Math.cos(toeIn) * Math.cos(camber),
    z: -Math.sin(camber),
  };
}

/**
 * Castor in radians of a steering axis that points from the lower to the upper point along `axis` (any length):
 * positive with the top rearwards.
 *
 * Source: ISO 8855:2011, 7.2 (from memory).
 * @throws RangeError if the vector has no length or is not finite
 */
export function castorOf(axis: Vector): number {
  const unit = unitOf(axis);
  return Math.atan2(0 - unit.x, unit.z);
}

/**
 * Kingpin (steering axis) inclination in radians, positive with the top inboard, from an axis that points from the
 * lower to the upper point.
 *
 * Source: ISO 8855:2011, 7.2 (from memory).
 * @throws RangeError if the vector has no length or is not finite
 */
export function kingpinOf(axis: Vector, side: Side): number {
  const unit = unitOf(axis);
  return Math.atan2(0 - sideSign(side) * unit.y, unit.z);
}

/**
 * The unit steering axis, pointing up, that shows these angles; undoes `castorOf` and `kingpinOf`.
 * @throws RangeError unless both angles lie within ±90°
 */
export function steeringAxisOf({ castor, kingpin, side }: SteeringAngles): Vector {
  for (const [name, angle] of Object.entries({ castor, kingpin })) {
    if (!(Math.abs(angle) < Math.PI / 2))
      throw new RangeError(`${name} must lie within ±90°, but is ${angle} rad`);
  }
  return unitOf({ x: -Math.tan(castor), y: -sideSign(side) * Math.tan(kingpin), z: 1 });
}

/**
 * Inclination angle as ISO 8855 has it, positive to the right on both sides (right-handed about x), from camber,
 * which is mirrored. Both in radians. The same function goes back.
 * @example inclinationOf(0.01, "left") // => -0.01
 */
export function inclinationOf(camber: number, side: Side): number {
  return 0 - sideSign(side) * camber;
}

/**
 * Steer angle as ISO 8855 has it, positive to the left on both sides (right-handed about z), from toe-in, which is
 * mirrored. Both in radians. The same function goes back.
 * @example steerOf(0.01, "right") // => 0.01
 */
export function steerOf(toeIn: number, side: Side): number {
  return 0 - sideSign(side) * toeIn;
}

// "0 −" above and below rather than a bare sign: an upright axis shows 0, not −0.
function unitOf({ x, y, z }: Vector): Vector {
  // Math.hypot guards against overflow at ten times the cost; sweeps come here four times a position.
  const length = Math.sqrt(x * x + y * y + z * z);
  if (!Number.isFinite(length) || length === 0) {
    throw new RangeError(`an axis needs a finite length above 0, but (${x}, ${y}, ${z}) has ${length}`);
  }
  return { x: x / length, y: y / length, z: z / length };
}
