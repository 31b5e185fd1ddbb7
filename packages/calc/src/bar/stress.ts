import { finite } from "../spring/guard";
import { type Bar, loadReach } from "./compliance";
import { barPolarSecondMoment, barSecondMoment } from "./section";

/** Stresses at the surface of an anti-roll bar, Pa, and the moments they come from, N·m. */
export interface BarStress {
  /** Torque in the middle. */
  readonly torque: number;
  /** Bending moment of the middle at the mounting bush. */
  readonly middleMoment: number;
  /** Bending moment of the arm at the bend. */
  readonly armMoment: number;
  /** Shear from the torque at the middle's surface. */
  readonly shear: number;
  /** von Mises stress of the middle at the bush, √(σ² + 3τ²). */
  readonly middle: number;
  /** Bending stress of the arm at the bend. */
  readonly arm: number;
  /** The greater of the two, and where it is. */
  readonly greatest: number;
  readonly place: "middle" | "arm";
}

/**
 * Surface stress of a bar under equal and opposite forces at its ends. Nominal: the bend's own concentration,
 * clamps, corrosion pits and fatigue are not in it.
 * @param force at one end, square to the plane of the bar, N; its sign does not matter
 */
export function barStress(bar: Bar, force: number): BarStress {
  const load = Math.abs(finite(force, "force"));
  const radius = bar.section.diameter / 2;
  const bendingModulus = barSecondMoment(bar.section) / radius;
  const torque = load * bar.leverLength;
  const middleMoment = load * loadReach(bar);
  const armMoment = load * bar.armLength;
  const shear = (torque * radius) / barPolarSecondMoment(bar.section);
  const middle = Math.hypot(middleMoment / bendingModulus, Math.sqrt(3) * shear);
  const arm = armMoment / bendingModulus;
  const moments = { torque, middleMoment, armMoment };
  return {
    ...moments,
    shear,
    middle,
    arm,
    greatest: Math.max(middle, arm),
    place: arm > middle ? "arm" : "middle",
  };
}
