import { CalcRefusal } from "../catalogue/refusal";
import { castorOf, kingpinOf, spinAxisOf } from "./axis";
import { requireFinite, type Vector } from "./vector";

/** Camber read on turntables with the wheel turned equally to both sides, radians. */
export interface CamberSwing {
  /** Read with the wheel steered towards its own outside (left wheel steered left). */
  readonly outward: number;
  /** Read with the wheel steered towards the car. */
  readonly inward: number;
  /** Turntable reading either way, from straight ahead; above 0 and below 90°. */
  readonly steer: number;
}

/**
 * Castor in radians by the gauge makers' formula, (outward − inward)/(2·sin steer). An approximation: with 5° of
 * castor, 10° of kingpin inclination and ±20° it reads 0.02° too much. {@link steeringAxisFromSwing} is exact.
 * @throws RangeError if the steer is not between 0 and 90°
 */
export function castorFromSwing({ outward, inward, steer }: CamberSwing): number {
  requireFinite({ outward, inward });
  requireSteer(steer);
  return (outward - inward) / (2 * Math.sin(steer));
}

/**
 * Castor and kingpin inclination in radians, exactly, from camber straight ahead (toe taken as nought) and at equal
 * turntable readings either way. The spin axis keeps its angle to the steering axis, so the steering axis is square
 * to both changes of the spin axis. Kingpin leans on small differences: an error of 0.1° in one camber reading at
 * ±20° moves it by up to 1.6°, castor by up to 0.15°.
 *
 * Source: first principles (rotation about an axis).
 * @throws CalcRefusal if no upright steering axis has these readings
 */
export function steeringAxisFromSwing(swing: CamberSwing & { readonly straight: number }): {
  castor: number;
  kingpin: number;
} {
  const { outward, inward, straight, steer } = swing;
  requireFinite({ outward, inward, straight });
  requireSteer(steer);
  const ahead = spinAxisOf({ camber: straight, toeIn: 0, side: "left" });
  const axis = cross(
    difference(spinAxisOf({ camber: outward, toeIn: -steer, side: "left" }), ahead),
    difference(spinAxisOf({ camber: inward, toeIn: steer, side: "left" }), ahead),
  );
  const upright = axis.z > 0 && Math.max(Math.abs(axis.x), Math.abs(axis.y)) < axis.z;
  if (!upright) {
    throw new CalcRefusal(
      "NO_STEERING_AXIS",
      `no steering axis within 45° of upright gives camber ${straight} rad straight ahead, ${outward} outward and ${inward} inward at ±${steer} rad: check the readings and their signs`,
    );
  }
  return { castor: castorOf(axis), kingpin: kingpinOf(axis, "left") };
}

function requireSteer(steer: number): void {
  if (!(steer > 0 && steer < Math.PI / 2)) {
    throw new RangeError(
      `the wheel must be steered by more than 0 and less than 90°, but was by ${steer} rad`,
    );
  }
}

const difference = (a: Vector, b: Vector): Vector => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const cross = (a: Vector, b: Vector): Vector => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});
