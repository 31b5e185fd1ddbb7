import { type BarSection, torsionalStiffness } from "../bar/section";
import { CalcRefusal } from "../catalogue/refusal";
import { finite, positive, written } from "./guard";

/** A torsion bar with a lever, used as a road spring. */
export interface TorsionBar {
  readonly section: BarSection;
  /** Length between the anchorages, m. */
  readonly length: number;
  /** Shear modulus, Pa. */
  readonly shear: number;
  /** Lever from the bar's axis to where the load acts, m. */
  readonly leverLength: number;
  /** Angle of the lever above the horizontal at the position meant, rad; negative below. */
  readonly leverAngle: number;
}

/** Twist of the bar, rad, under a vertical load, N, on the lever's end: F·l·cos θ over GJ/L. */
export function torsionBarTwist(bar: TorsionBar, load: number): number {
  const stiffness = torsionalStiffness(bar.section, { shear: bar.shear, length: bar.length });
  return (finite(load, "load") * positive(bar.leverLength, "leverLength") * Math.cos(angle(bar))) / stiffness;
}

function angle({ leverAngle }: TorsionBar): number {
  if (Math.abs(finite(leverAngle, "leverAngle")) < Math.PI / 2) return leverAngle;
  const found = written(leverAngle, "angle", "°");
  throw new CalcRefusal(
    "LEVER_UPRIGHT",
    `the lever must lie between −90° and 90°, but stands at ${found}`,
    "leverAngle",
  );
}

/**
 * Vertical rate at the lever's end, N/m, where the lever stands at an angle θ under a load F. From F·l·cos θ =
 * K·(twist) follows dF/dz = (K/l² + F·sin θ/l)/cos²θ: exact, and K/l² for a level lever.
 */
export function torsionBarRate(bar: TorsionBar, load: number): number {
  const stiffness = torsionalStiffness(bar.section, { shear: bar.shear, length: bar.length });
  const lever = positive(bar.leverLength, "leverLength");
  const tilt = angle(bar);
  return (stiffness / lever ** 2 + (finite(load, "load") * Math.sin(tilt)) / lever) / Math.cos(tilt) ** 2;
}
