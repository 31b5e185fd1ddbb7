import { CalcRefusal } from "../catalogue/refusal";
import { finite, notNegative, positive, written } from "./guard";

/** A helical compression spring of round wire, metres. */
export interface Coil {
  /** Wire diameter d. */
  readonly wire: number;
  /** Mean coil diameter D: outside diameter less one wire. */
  readonly meanDiameter: number;
  /** Coils that give, n. */
  readonly activeCoils: number;
  /** Shear modulus G, Pa. */
  readonly shear: number;
}

/** How the ends of a coil are made; decides how many coils do not give and how high it is when coil-bound. */
export const coilEnds = ["plain", "plain ground", "closed", "closed ground"] as const;
export type CoilEnds = (typeof coilEnds)[number];

const deadCoils: Readonly<Record<CoilEnds, number>> = {
  plain: 0,
  "plain ground": 1,
  closed: 2,
  "closed ground": 2,
};

/** Coils that give, of all coils (Shigley Table 10-1). @throws CalcRefusal when none is left */
export function activeCoils(totalCoils: number, ends: CoilEnds): number {
  const active = positive(totalCoils, "totalCoils") - deadCoils[ends];
  if (active > 0) return active;
  throw new CalcRefusal(
    "NO_ACTIVE_COIL",
    `${totalCoils} coils with ${ends} ends leave none that gives: more than ${deadCoils[ends]} are needed`,
    "totalCoils",
  );
}

/** Height with all coils touching, m (Shigley Table 10-1): one wire more than the coils where the ends are not ground. */
export function solidHeight(wire: number, totalCoils: number, ends: CoilEnds): number {
  const ground = ends === "plain ground" || ends === "closed ground";
  return positive(wire, "wire") * (positive(totalCoils, "totalCoils") + (ground ? 0 : 1));
}

/** Spring index C = D/d. @throws CalcRefusal unless it is greater than 1, without which no coil can be wound */
export function springIndex({ wire, meanDiameter }: Pick<Coil, "wire" | "meanDiameter">): number {
  const index = positive(meanDiameter, "meanDiameter") / positive(wire, "wire");
  if (index > 1) return index;
  throw new CalcRefusal(
    "WIRE_TOO_THICK",
    `mean coil diameter ${written(meanDiameter, "length")} must exceed the wire's ${written(wire, "length")}`,
    "meanDiameter",
  );
}

/**
 * Rate of a coil spring, N/m: G d⁴/(8 D³ n). Doubling the active coils halves it.
 * @throws CalcRefusal unless wire, diameter, coils and modulus are positive and the index exceeds 1
 */
export function coilRate(coil: Coil): number {
  springIndex(coil);
  const { wire, meanDiameter } = coil;
  const coils = positive(coil.activeCoils, "activeCoils");
  return (positive(coil.shear, "shearModulus") * wire ** 4) / (8 * meanDiameter ** 3 * coils);
}

/** Active coils that give a wanted rate with the same wire and diameter: the inverse of {@link coilRate}. */
export function activeCoilsForRate(wantedRate: number, coil: Omit<Coil, "activeCoils">): number {
  return coilRate({ ...coil, activeCoils: 1 }) / positive(wantedRate, "wantedRate");
}

/** Wahl's factor for curvature and direct shear, (4C − 1)/(4C − 4) + 0.615/C (Wahl, Mechanical Springs, 1963). */
export function wahlFactor(index: number): number {
  if (finite(index, "springIndex") > 1) return (4 * index - 1) / (4 * index - 4) + 0.615 / index;
  throw new CalcRefusal("INDEX_TOO_SMALL", `spring index must exceed 1, but is ${index}`, "springIndex");
}

/** Factor for direct shear alone, 1 + 0.5/C (Shigley eq. 10-3): what static strength is often judged with. */
export function directShearFactor(index: number): number {
  return 1 + 0.5 / positive(index, "springIndex");
}

/**
 * Shear stress in the wire, Pa: K·8FD/(πd³).
 * @param force along the spring's axis, N, not negative
 * @param factor correction K, e.g. {@link wahlFactor} or {@link directShearFactor}
 */
export function coilStress(
  { wire, meanDiameter }: Pick<Coil, "wire" | "meanDiameter">,
  { force, factor }: { force: number; factor: number },
): number {
  const load = notNegative(force, "force");
  return (
    (positive(factor, "factor") * 8 * load * positive(meanDiameter, "meanDiameter")) /
    (Math.PI * positive(wire, "wire") ** 3)
  );
}

/**
 * Force of a spring at a length, N: rate × (free length − length); 0 when it is longer than free.
 * @throws CalcRefusal unless rate and free length are positive and the length is not negative
 */
export function springForce(rate: number, freeLength: number, length: number): number {
  const compression = positive(freeLength, "freeLength") - notNegative(length, "length");
  return positive(rate, "rate") * Math.max(0, compression);
}
