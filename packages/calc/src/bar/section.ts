import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive, written } from "../spring/guard";

/** A round bar or tube, m. */
export interface BarSection {
  /** Outside diameter. */
  readonly diameter: number;
  /** Inside diameter of a tube; left out or 0 for a solid bar. */
  readonly bore?: number | undefined;
}

/** d⁴ − b⁴, m⁴: what every stiffness of a round bar is proportional to. */
export function fourthPower({ diameter, bore = 0 }: BarSection): number {
  positive(diameter, "diameter");
  notNegative(bore, "bore");
  if (bore < diameter) return diameter ** 4 - bore ** 4;
  throw new CalcRefusal(
    "BORE_TOO_LARGE",
    `bore ${written(bore, "length")} must be less than the diameter ${written(diameter, "length")}`,
    "bore",
  );
}

/**
 * Polar second moment of area J = π(d⁴ − b⁴)/32, m⁴, of a solid or tubular round bar.
 * @throws CalcRefusal unless 0 ≤ bore < diameter
 */
export function barPolarSecondMoment(section: BarSection): number {
  return (Math.PI * fourthPower(section)) / 32;
}

/** Second moment of area in bending I = J/2, m⁴. @throws CalcRefusal unless 0 ≤ bore < diameter */
export function barSecondMoment(section: BarSection): number {
  return barPolarSecondMoment(section) / 2;
}

/**
 * How much stiffer a bar of one section is than one of the same shape, arms, material and mounting in another:
 * (d₂⁴ − b₂⁴)/(d₁⁴ − b₁⁴). Links and bushes in series, where they give, bring the true ratio nearer to 1.
 * @example barStiffnessRatio({ diameter: 0.018 }, { diameter: 0.019 }) // => 1.2414
 */
export function barStiffnessRatio(before: BarSection, after: BarSection): number {
  return fourthPower(after) / fourthPower(before);
}

/**
 * Torsional stiffness GJ/L, N·m/rad, of a straight round bar or tube.
 * @param shear shear modulus, Pa
 * @param length free length between the ends that turn against each other, m
 */
export function torsionalStiffness(
  section: BarSection,
  { shear, length }: { shear: number; length: number },
): number {
  return (positive(shear, "shearModulus") * barPolarSecondMoment(section)) / positive(length, "length");
}
