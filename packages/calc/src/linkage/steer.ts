import { ackermannOuter, ackermannRatio, turnRadius } from "../alignment/ackermann";
import { steerOf } from "../alignment/axis";
import { CalcRefusal } from "../catalogue/refusal";
import { type AxleCorners, type AxlePosition, readAxle } from "./axle";
import type { Corner } from "./corner";
import { addScaled, mutable, subtract } from "./vector";
import { upright } from "./wheel";

/** Both front wheels' steer against the ideal. */
export interface AckermannReading {
  /** Unsigned, rad. */
  readonly inner: number;
  readonly outer: number;
  /** Ideal angle of the outer wheel at that inner one, rad. */
  readonly idealOuter: number;
  /** 1 ideal, 0 parallel, negative anti-Ackermann. */
  readonly ratio: number;
  /** From the middle of the rear axle to the turn centre that the inner wheel points at, m. */
  readonly turnRadius: number;
  /** Between the steering axes at the ground, straight ahead, m. */
  readonly kingpinTrack: number;
}

/**
 * Steers an axle and judges it. Headings are taken whole, static toe included, as turntables zeroed on the car's x
 * axis show them.
 * @throws CalcRefusal if it does not reach, or does not steer enough to tell an inner wheel
 */
export function readAckermann(
  axle: AxleCorners,
  { wheelbase, ...position }: AxlePosition & { readonly wheelbase: number },
): AckermannReading {
  readAxle(axle, { ...position, roll: 0, rack: 0 });
  const kingpinTrack = groundTrack(axle);
  const { left, right } = readAxle(axle, position);
  const headings = [steerOf(left.toeIn, "left"), steerOf(right.toeIn, "right")] as const;
  const [inner, outer] = headings[0] + headings[1] >= 0 ? headings : ([-headings[1], -headings[0]] as const);
  if (!(inner > 1e-4 && outer > 0)) {
    throw new CalcRefusal(
      "STRAIGHT_AHEAD",
      `with the rack at ${position.rack ?? 0} m the wheels head ${headings[0]} and ${headings[1]} rad to the left, which is no turn`,
      "rack",
    );
  }
  const plan = { wheelbase, kingpinTrack };
  return {
    inner,
    outer,
    idealOuter: ackermannOuter(inner, plan),
    ratio: ackermannRatio(inner, outer, plan),
    turnRadius: turnRadius(inner, plan),
    kingpinTrack,
  };
}

/** Distance between the steering axes where they meet the ground, m, as the corners stand. */
function groundTrack({ left, right }: AxleCorners): number {
  return groundY(left) - groundY(right);
}

function groundY({ steeringAxis, wheel }: Corner): number {
  if (steeringAxis === null) throw new CalcRefusal("NO_STEERING", "this axle does not steer", "rack");
  const line = mutable();
  const contact = mutable();
  wheel.contact(contact, upright);
  subtract(line, steeringAxis.upper, steeringAxis.lower);
  addScaled(line, steeringAxis.lower, line, (contact.z - steeringAxis.lower.z) / line.z);
  return line.y;
}
