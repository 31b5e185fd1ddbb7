import { CalcRefusal } from "../catalogue/refusal";

/** What the ideal steer angles of an axle follow from, metres. */
export interface SteerPlan {
  readonly wheelbase: number;
  /** Between the two steering axes where they meet the ground. */
  readonly kingpinTrack: number;
}

/**
 * Angle in radians of the outer wheel for which both front wheels and the rear axle turn about one point:
 * cot(outer) − cot(inner) = w/L. `inner` is unsigned, in radians; 0 gives 0.
 *
 * Source: the fundamental steering equation; ISO 8855:2011, 7.1.9 defines the geometry.
 * @throws RangeError unless 0 ≤ inner < 90° and both lengths are above 0
 */
export function ackermannOuter(inner: number, plan: SteerPlan): number {
  requirePlan(plan);
  if (!(inner >= 0 && inner < Math.PI / 2)) {
    throw new RangeError(`the inner wheel's angle must be from 0 to below 90°, but is ${inner} rad`);
  }
  const { wheelbase, kingpinTrack } = plan;
  // Written without the cotangent, so that straight ahead needs no case of its own.
  return Math.atan2(
    wheelbase * Math.sin(inner),
    wheelbase * Math.cos(inner) + kingpinTrack * Math.sin(inner),
  );
}

/**
 * Steer angle in radians of the single wheel that would take the turn: atan(L/R), R (m) to the middle of the rear
 * axle. Source: ISO 8855:2011 (Ackermann steer angle), formula read in a glossary.
 * @throws RangeError unless both are above 0
 */
export function ackermannSteer(wheelbase: number, radius: number): number {
  requireLengths({ wheelbase, radius });
  return Math.atan(wheelbase / radius);
}

/**
 * Radius in metres from the middle of the rear axle to the turn centre that the inner wheel points at.
 * @throws RangeError as {@link ackermannOuter}, and for an inner angle of 0, where there is no centre
 */
export function turnRadius(inner: number, plan: SteerPlan): number {
  requirePlan(plan);
  if (!(inner > 0 && inner < Math.PI / 2)) {
    throw new RangeError(`a turn centre needs an inner angle above 0 and below 90°, but it is ${inner} rad`);
  }
  return plan.wheelbase / Math.tan(inner) + plan.kingpinTrack / 2;
}

/**
 * Ackermann as a ratio: (inner − outer) over the difference that would be ideal at the same inner angle. 1 is
 * ideal, 0 parallel steer, negative anti-Ackermann. Others divide the angles at the outer wheel or the steering
 * arms' meeting point by the wheelbase, and get another figure.
 *
 * @throws CalcRefusal where the inner wheel stands so nearly straight that the ratio says nothing
 */
export function ackermannRatio(inner: number, outer: number, plan: SteerPlan): number {
  const ideal = inner - ackermannOuter(inner, plan);
  if (ideal < 1e-9) {
    throw new CalcRefusal(
      "STRAIGHT_AHEAD",
      `at an inner angle of ${inner} rad there is no turn to judge`,
      "inner",
    );
  }
  return (inner - outer) / ideal;
}

function requirePlan({ wheelbase, kingpinTrack }: SteerPlan): void {
  requireLengths({ wheelbase, "kingpin track": kingpinTrack });
}

function requireLengths(lengths: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(lengths)) {
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`the ${name} must be above 0 m, but is ${value}`);
  }
}
