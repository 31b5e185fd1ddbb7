import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import {
  activeCoils,
  coilEnds,
  coilRate,
  coilStress,
  solidHeight,
  springForce,
  springIndex,
  wahlFactor,
} from "./coil";
import { shearModulusField } from "./field";
import { givenSteps } from "./given";
import { written } from "./guard";
import { carbonSteel, moduliOrSteel } from "./material";
import { worked } from "./worked";

const input = z.object({
  wire: quantity("length", { label: "Wire diameter", above: 0, max: 0.05, unit: "mm" }),
  meanDiameter: quantity("length", {
    label: "Mean coil diameter",
    help: "Outside diameter less one wire",
    above: 0,
    max: 0.5,
    unit: "mm",
  }),
  totalCoils: quantity("count", { label: "All coils, the ends included", above: 0, max: 100 }),
  ends: z.enum(coilEnds).meta({
    title: "Ends",
    description: "How the ends are made: plain, plain ground, closed, closed ground",
  }),
  freeLength: quantity("length", { label: "Free length", above: 0, max: 2, unit: "mm" }).optional(),
  load: quantity("force", {
    label: "Load along the spring",
    help: "Where the stress is wanted",
    min: 0,
    unit: "N",
  }).optional(),
  shearModulus: shearModulusField.optional(),
});
type Input = z.output<typeof input>;

export const springCoilComputation = defineComputation({
  name: "spring.coil",
  title: "Coil spring rate",
  summary: "Rate, index, solid height and Wahl-corrected stress of a coil spring from its wire and coils.",
  input,
  outputs: {
    rate: { label: "Rate", dimension: "rate", unit: "N/mm" },
    activeCoils: { label: "Coils that give", dimension: "count" },
    index: { label: "Spring index", dimension: "ratio" },
    solidHeight: { label: "Solid height", dimension: "length", unit: "mm" },
    travel: {
      how: ["x_s", "L_0 − L_s"],
      label: "Travel from free to solid",
      dimension: "length",
      unit: "mm",
    },
    stress: { label: "Shear stress at the load, Wahl-corrected", dimension: "pressure", unit: "MPa" },
    solidStress: {
      label: "Shear stress when coil-bound, Wahl-corrected",
      dimension: "pressure",
      unit: "MPa",
    },
  },
  source: [
    {
      title: "Shigley, Mechanical Engineering Design",
      locus: "ch. 10, Tables 10-1 and A-5",
      status: "read-formula",
    },
    { title: "Wahl, Mechanical Springs (1963)", locus: "correction factor", status: "memory" },
  ],
  validity:
    "Cylindrical springs of round wire at constant pitch, index 4 to 12, that do not buckle. Barrel-shaped, conical and variable-pitch springs have no single rate.",
  caution:
    "A compressed road spring holds enough energy to kill: use proper compressors. Settling and fatigue are not in the stress.",
  example: {
    wire: "11 mm",
    meanDiameter: "100 mm",
    totalCoils: 9,
    ends: "closed ground",
    freeLength: "330 mm",
    load: "3000 N",
  },
  compute(given) {
    const { wire, meanDiameter, ends, load } = given;
    const { shear } = moduliOrSteel({ shear: given.shearModulus });
    const active = activeCoils(given.totalCoils, ends);
    const rate = coilRate({ wire, meanDiameter, activeCoils: active, shear });
    const index = springIndex(given);
    const factor = wahlFactor(index);
    const solid = solidHeight(wire, given.totalCoils, ends);
    const travel = travelOf(given, solid);
    const stress = load === undefined ? null : coilStress(given, { force: load, factor });
    const solidStress =
      given.freeLength === undefined
        ? null
        : coilStress(given, { force: springForce(rate, given.freeLength, solid), factor });
    const working = () => [
      ...givenSteps(input, given, {
        symbols: {
          wire: "d",
          meanDiameter: "D",
          totalCoils: "n_t",
          freeLength: "L_0",
          load: "F",
          shearModulus: "G",
        },
      }),
      ...worked([
        [
          "G",
          "Shear modulus",
          "taken: steel, Shigley Table A-5",
          given.shearModulus === undefined ? carbonSteel.shear : null,
          "pressure",
          "GPa",
        ],
        ["n", "Coils that give", "n_t less the dead ones of these ends", active, "count"],
        ["k", "Rate", "G·d⁴/(8·D³·n)", rate, "rate", "N/mm"],
        ["C", "Spring index", "D/d", index, "ratio"],
        ["K_w", "Wahl factor", "(4C − 1)/(4C − 4) + 0.615/C", factor, "ratio"],
        ["L_s", "Solid height", "d·n_t, one more d for ends not ground", solid, "length", "mm"],
        ["τ", "Shear stress at the load", "K_w·8·F·D/(π·d³)", stress, "pressure", "MPa"],
        [
          "τ_s",
          "Shear stress when coil-bound",
          "as above with F = k·(L_0 − L_s)",
          solidStress,
          "pressure",
          "MPa",
        ],
      ]),
    ];
    const outputs = { rate, activeCoils: active, index, solidHeight: solid, travel, stress, solidStress };
    return { outputs, working, warnings: warningsOf(given, { index, travel, rate }) };
  },
});

function travelOf({ freeLength }: Input, solid: number): number | null {
  if (freeLength === undefined) return null;
  if (freeLength > solid) return freeLength - solid;
  throw new CalcRefusal(
    "SHORTER_THAN_SOLID",
    `free length ${written(freeLength, "length")} must exceed the solid height ${written(solid, "length")}`,
    "freeLength",
  );
}

function warningsOf(
  { load, freeLength, meanDiameter }: Input,
  { index, travel, rate }: { index: number; travel: number | null; rate: number },
): string[] {
  const warnings: string[] = [];
  if (index < 4 || index > 12)
    warnings.push(`Spring index ${index.toFixed(1)} is outside 4 to 12: hard to wind, or slack and tangled.`);
  if (load !== undefined && travel !== null && load >= rate * travel)
    warnings.push("The load closes the spring solid.");
  // Shigley eq. 10-12, steel, ends squared on flat plates: stable below 5.26 D.
  if (freeLength !== undefined && freeLength > 5.26 * meanDiameter)
    warnings.push("Longer than 5.26 coil diameters: it may buckle unless it is guided.");
  return warnings;
}
