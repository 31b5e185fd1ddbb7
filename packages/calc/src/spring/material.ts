import { positive } from "./guard";

/** Elastic moduli of a material, Pa. */
export interface ElasticModuli {
  /** Young's modulus E. */
  readonly young: number;
  /** Shear modulus G. */
  readonly shear: number;
}

/**
 * Carbon and spring steel: E 207 GPa, G 79.3 GPa (Shigley, Mechanical Engineering Design, Table A-5). The table's G
 * is measured; the isotropic relation E/2(1+ν) with ν = 0.292 would give 80.1 GPa, so about 1 % is uncertain.
 */
export const carbonSteel: ElasticModuli = { young: 207e9, shear: 79.3e9 };

/** The moduli given, each left out taken from {@link carbonSteel}. @throws CalcRefusal unless both are positive */
export function moduliOrSteel(given: {
  readonly young?: number | undefined;
  readonly shear?: number | undefined;
}): ElasticModuli {
  return {
    young: positive(given.young ?? carbonSteel.young, "youngModulus"),
    shear: positive(given.shear ?? carbonSteel.shear, "shearModulus"),
  };
}
