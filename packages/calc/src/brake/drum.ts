import { CalcRefusal } from "../catalogue/refusal";
import { finite, positive, written } from "../spring/guard";
import { workingPressure } from "./disc";

/** One drum brake. */
export interface DrumBrake {
  /** One piston of the wheel cylinder, m²; each shoe has one like it. */
  readonly pistonArea: number;
  /** Friction force at the drum over the force on one shoe's tip, both shoes together; see {@link drumBrakeFactor}. */
  readonly brakeFactor: number;
  /** m. */
  readonly drumRadius: number;
  /** Line pressure that only overcomes the return springs, Pa; 0 when left out. */
  readonly thresholdPressure?: number | undefined;
}

/** Torque of one drum, N·m: C*·(p − p₀)·A·r. */
export function drumTorque(pressure: number, brake: DrumBrake): number {
  return drumTorquePerPressure(brake) * workingPressure(pressure, brake.thresholdPressure);
}

/** Torque of one drum per line pressure beyond the threshold, N·m/Pa. */
export function drumTorquePerPressure({ pistonArea, brakeFactor, drumRadius }: DrumBrake): number {
  const pull = positive(brakeFactor, "brakeFactor") * positive(pistonArea, "pistonArea");
  return pull * positive(drumRadius, "drumRadius");
}

/** Geometry of an internal shoe that swings on a fixed pin. Lengths m, angles rad. */
export interface Shoe {
  readonly drumRadius: number;
  /** Drum centre to the pin. */
  readonly pinDistance: number;
  /** Pin to the line of the force at the tip, square to it. */
  readonly tipArm: number;
  /** Where the lining begins and ends, counted about the drum's centre from the pin. */
  readonly liningStart: number;
  readonly liningEnd: number;
}

/** Leading: the drum runs from tip to pin and drags the shoe into itself. */
export type ShoeKind = "leading" | "trailing";

/**
 * Friction force at the drum over the force at the tip of one shoe: long-shoe theory, pressure as the sine of the
 * angle from the pin (Shigley, Mechanical Engineering Design, ch. 16-2).
 * @throws CalcRefusal (`SELF_LOCKING`) when the shoe would lock by itself, or for a lining that does not exist
 */
export function shoeFactor(kind: ShoeKind, friction: number, shoe: Shoe): number {
  const { drumRadius, pinDistance, tipArm, liningStart, liningEnd } = checkedShoe(shoe);
  const spread = Math.cos(liningStart) - Math.cos(liningEnd);
  const rise = (Math.sin(liningEnd) ** 2 - Math.sin(liningStart) ** 2) / 2;
  const along = (liningEnd - liningStart) / 2 - (Math.sin(2 * liningEnd) - Math.sin(2 * liningStart)) / 4;
  const normal = pinDistance * along;
  const drag = positive(friction, "friction") * (drumRadius * spread - pinDistance * rise);
  const moment = kind === "leading" ? normal - drag : normal + drag;
  if (moment > 0) return (friction * tipArm * spread) / moment;
  throw new CalcRefusal(
    "SELF_LOCKING",
    `at a friction of ${friction} this shoe locks by itself: it would need no force at its tip`,
    "friction",
  );
}

/** Simplex: one leading and one trailing shoe. Duplex: two leading ones, each with its own cylinder. */
export type DrumArrangement = "simplex" | "duplex";

/**
 * Brake factor C* of a drum with two like shoes on fixed pins and equal forces at their tips. A duplex brake has two
 * trailing shoes when the car runs backwards.
 * @throws CalcRefusal as {@link shoeFactor}
 */
export function drumBrakeFactor(arrangement: DrumArrangement, friction: number, shoe: Shoe): number {
  const leading = shoeFactor("leading", friction, shoe);
  return leading + (arrangement === "duplex" ? leading : shoeFactor("trailing", friction, shoe));
}

function checkedShoe(shoe: Shoe): Shoe {
  positive(shoe.drumRadius, "drumRadius");
  positive(shoe.tipArm, "tipArm");
  const { liningStart, liningEnd, pinDistance, drumRadius } = shoe;
  if (!(positive(pinDistance, "pinDistance") < drumRadius))
    throw new CalcRefusal(
      "PIN_OUTSIDE_DRUM",
      `the pin must lie inside the drum, ${written(drumRadius, "length")}, but is ${written(pinDistance, "length")} from its centre`,
      "pinDistance",
    );
  if (
    finite(liningStart, "liningStart") >= 0 &&
    finite(liningEnd, "liningEnd") > liningStart &&
    liningEnd < Math.PI
  )
    return shoe;
  throw new CalcRefusal(
    "NO_SUCH_LINING",
    `the lining must run from 0° or more to less than 180° from the pin, but runs from ${written(liningStart, "angle")} to ${written(liningEnd, "angle")}`,
    "liningEnd",
  );
}
