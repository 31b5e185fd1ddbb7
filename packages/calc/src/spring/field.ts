import { quantity } from "../catalogue/field";

/** Fields that several spring computations share. */
export const springRateField = quantity("rate", { label: "Spring rate", above: 0, max: 1e6, unit: "N/mm" });

export const motionRatioField = quantity("ratio", {
  label: "Motion ratio",
  help: "Spring movement per wheel movement, usually below 1",
  above: 0,
  max: 2,
});

export const wheelRateField = quantity("rate", { label: "Wheel rate", above: 0, max: 1e6, unit: "N/mm" });

export const sprungMassField = quantity("mass", {
  label: "Sprung mass on this wheel",
  help: "Corner weight less wheel, tyre, brake, upright and half the links",
  above: 0,
  max: 2000,
  unit: "kg",
});

export const tyreRateField = quantity("rate", {
  label: "Vertical rate of the tyre",
  help: "Left out, the tyre is taken as rigid",
  above: 0,
  unit: "N/mm",
});

export const shearModulusField = quantity("pressure", {
  label: "Shear modulus",
  help: "Left out, that of steel",
  above: 0,
  unit: "GPa",
});

/** Warning where a motion ratio is outside what suspensions have. */
export function ratioWarnings(motionRatio: number): string[] {
  if (motionRatio <= 1.2) return [];
  return [
    "A motion ratio above 1.2 is rare: check that it is spring over wheel movement, not the other way round.",
  ];
}
