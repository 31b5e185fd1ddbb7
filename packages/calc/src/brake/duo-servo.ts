import { CalcRefusal } from "../catalogue/refusal";
import { positive, written } from "../spring/guard";
import { type Shoe, shoeFactor } from "./drum";

/** The arc of one lining, rad, counted about the drum's centre from the shoe's own pivot. */
export interface Lining {
  readonly liningStart: number;
  readonly liningEnd: number;
}

/**
 * A drum with two shoes that push one another: the cylinder spreads their tops, a floating adjuster joins their
 * bottoms, and one anchor above the cylinder takes all the torque. Lengths m.
 */
export interface DuoServoDrum {
  readonly drumRadius: number;
  /** Drum centre to the line of the cylinder's force. */
  readonly cylinderHeight: number;
  /** Drum centre to the adjuster between the shoes' lower ends. */
  readonly adjusterDistance: number;
  /** Drum centre to the anchor; at the cylinder or beyond it. */
  readonly anchorDistance: number;
  /** The shoe that the drum drags from the cylinder to the adjuster; its arc is counted from the adjuster. */
  readonly primary: Lining;
  /** The shoe that the primary pushes; its arc is counted from the anchor. */
  readonly secondary: Lining;
}

/** Friction force at the drum over the cylinder's force on one shoe. */
export interface DuoServoFactor {
  readonly primary: number;
  readonly secondary: number;
  /** Force in the adjuster over the cylinder's force. */
  readonly adjusterForce: number;
  /** Both shoes together: C*. */
  readonly brakeFactor: number;
}

/**
 * Brake factor of a duo-servo drum, each shoe by long-shoe theory (Shigley, ch. 16-2; arrangement as in Limpert, Brake
 * Design and Safety). The primary turns about the adjuster like a leading shoe about its pin, and hands on what the
 * cylinder gives it and what the drum drags into it: about the drum's centre P·a = F·h + T₁. The secondary is a
 * leading shoe on the anchor, pushed at its lower end by P and, near the anchor, by the cylinder.
 *
 * @throws CalcRefusal (`SELF_LOCKING`) as {@link shoeFactor}; (`ANCHOR_BELOW_CYLINDER`) for an anchor nearer the centre
 *   than the cylinder
 */
export function duoServoFactor(friction: number, drum: DuoServoDrum): DuoServoFactor {
  const { drumRadius, cylinderHeight, adjusterDistance, anchorDistance } = checkedDrum(drum);
  const primary = shoeFactor("leading", friction, {
    ...drum.primary,
    drumRadius,
    pinDistance: adjusterDistance,
    tipArm: adjusterDistance + cylinderHeight,
  });
  const adjusterForce = (cylinderHeight + primary * drumRadius) / adjusterDistance;
  const reach = anchorDistance + adjusterDistance;
  // What the cylinder pushes near the anchor, as if it pushed at the adjuster.
  const pushed = adjusterForce + (anchorDistance - cylinderHeight) / reach;
  const onAnchor: Shoe = { ...drum.secondary, drumRadius, pinDistance: anchorDistance, tipArm: reach };
  const secondary = pushed * shoeFactor("leading", friction, onAnchor);
  return { primary, secondary, adjusterForce, brakeFactor: primary + secondary };
}

/** The same drum with the car running backwards: the shoes change parts, and each arc is counted from its other end. */
export function backwards({ primary, secondary, ...drum }: DuoServoDrum): DuoServoDrum {
  return { ...drum, primary: turned(secondary), secondary: turned(primary) };
}

function turned({ liningStart, liningEnd }: Lining): Lining {
  return { liningStart: Math.PI - liningEnd, liningEnd: Math.PI - liningStart };
}

function checkedDrum(drum: DuoServoDrum): DuoServoDrum {
  positive(drum.drumRadius, "drumRadius");
  positive(drum.adjusterDistance, "adjusterDistance");
  const { anchorDistance, cylinderHeight } = drum;
  if (positive(anchorDistance, "anchorDistance") >= positive(cylinderHeight, "cylinderHeight")) return drum;
  throw new CalcRefusal(
    "ANCHOR_BELOW_CYLINDER",
    `the anchor must lie at the cylinder's line or beyond it, ${written(cylinderHeight, "length", "mm")} from the drum's centre, but lies ${written(anchorDistance, "length", "mm")} from it`,
    "anchorDistance",
  );
}
