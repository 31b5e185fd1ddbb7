import { notNegative, positive, wholeNumber } from "../spring/guard";
import { stressArea, type ThreadForm } from "./thread-form";

/** Strengths of a bolt's material, Pa; a grade's are one. */
export interface BoltStrength {
  readonly tensile: number;
  readonly yield: number;
  readonly proof: number;
}

/** Tensile loads of a bolt on its stress area, N. */
export interface BoltLoads {
  readonly proof: number;
  readonly yield: number;
  readonly tensile: number;
}

/** Proof, yield and breaking load on the tensile stress area: A_s·S_p, A_s·R_e, A_s·R_m (ISO 898-1, SAE J429). */
export function boltLoads(thread: ThreadForm, strength: BoltStrength): BoltLoads {
  const area = stressArea(thread);
  return {
    proof: area * positive(strength.proof, "strength.proof"),
    yield: area * positive(strength.yield, "strength.yield"),
    tensile: area * positive(strength.tensile, "strength.tensile"),
  };
}

/** Shear strength of steel over its tensile strength, as taken for bolts (EN 1993-1-8 table 3.4, from memory). */
export const shearShare = 0.6;
/** Shear yield over tensile yield: 1/√3 (von Mises). */
export const shearYieldShare = 1 / Math.sqrt(3);

/** Shear loads of a bolt, N. */
export interface ShearCapacity {
  /** First permanent set: A·R_e/√3. */
  readonly yield: number;
  /** Break: 0.6·A·R_m. */
  readonly ultimate: number;
}

/**
 * Shear capacity of an area, N, times the number of planes cut.
 * @param area stress area where the plane lies in the thread, shank section where it is plain, m²
 */
export function shearCapacity(area: number, strength: BoltStrength, planes = 1): ShearCapacity {
  const cut = notNegative(area, "area") * wholeNumber(planes, "planes");
  return {
    yield: cut * shearYieldShare * positive(strength.yield, "strength.yield"),
    ultimate: cut * shearShare * positive(strength.tensile, "strength.tensile"),
  };
}
