import { z } from "zod";
import { sectionFields } from "../bar/field";
import { torsionalStiffness } from "../bar/section";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { shearModulusField } from "./field";
import { givenSteps } from "./given";
import { carbonSteel, moduliOrSteel } from "./material";
import { torsionBarRate, torsionBarTwist } from "./torsion-bar";
import { worked } from "./worked";

const input = z.object({
  ...sectionFields,
  length: quantity("length", { label: "Length between the anchorages", above: 0, max: 3, unit: "mm" }),
  leverLength: quantity("length", {
    label: "Lever",
    help: "From the bar's axis to where the load acts",
    above: 0,
    max: 1,
    unit: "mm",
  }),
  leverAngle: quantity("angle", {
    label: "Lever above the horizontal",
    help: "Negative when it hangs down; left out, level",
    min: -1.5,
    max: 1.5,
    unit: "°",
  }).optional(),
  load: quantity("force", { label: "Vertical load on the lever's end", min: 0, unit: "N" }).optional(),
  shearModulus: shearModulusField.optional(),
});

export const springTorsionBarComputation = defineComputation({
  name: "spring.torsionBar",
  title: "Torsion bar spring",
  summary: "Rate at the lever, twist and stress of a torsion bar used as a road spring.",
  input,
  outputs: {
    rate: { label: "Vertical rate at the lever's end", dimension: "rate", unit: "N/mm" },
    stiffness: { label: "Torsional stiffness", dimension: "angularRate", unit: "N·m/°" },
    twist: { label: "Twist under the load", dimension: "angle", unit: "°" },
    stress: { label: "Shear stress under the load", dimension: "pressure", unit: "MPa" },
  },
  source: [
    {
      title: "Shigley, Mechanical Engineering Design",
      locus: "torsion of round bars; Table A-5",
      status: "read-formula",
    },
  ],
  validity: "A round bar or tube, elastic, anchored rigidly; splines and their fillets not judged.",
  caution:
    "Torsion bars are preset in one direction: left and right must not be exchanged. A loaded lever swings hard.",
  example: { diameter: "22 mm", length: "1000 mm", leverLength: "330 mm", leverAngle: "5°", load: "2200 N" },
  compute(given) {
    const { shear } = moduliOrSteel({ shear: given.shearModulus });
    const { diameter, bore, length, leverLength, leverAngle = 0 } = given;
    const bar = { section: { diameter, bore }, length, shear, leverLength, leverAngle };
    const rate = torsionBarRate(bar, given.load ?? 0);
    const stiffness = torsionalStiffness(bar.section, bar);
    const twist = given.load === undefined ? null : torsionBarTwist(bar, given.load);
    const stress = twist === null ? null : (shear * twist * diameter) / (2 * length);
    const working = () => [
      ...givenSteps(input, given, {
        symbols: {
          diameter: "d",
          bore: "b",
          length: "L",
          leverLength: "l",
          leverAngle: "θ",
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
        ["K", "Torsional stiffness", "G·π(d⁴ − b⁴)/(32·L)", stiffness, "angularRate", "N·m/°"],
        ["k", "Rate at the lever's end", "(K/l² + F·sin θ/l)/cos²θ", rate, "rate", "N/mm"],
        ["ψ", "Twist", "F·l·cos θ/K", twist, "angle", "°"],
        ["τ", "Shear stress", "G·ψ·d/(2·L)", stress, "pressure", "MPa"],
      ]),
    ];
    return { outputs: { rate, stiffness, twist, stress }, working, warnings: warningsOf(given) };
  },
});

function warningsOf({ leverAngle = 0, load }: z.output<typeof input>): string[] {
  if (leverAngle === 0 || load !== undefined) return [];
  return ["The lever is not level but no load is given: what the load adds to the rate is left out."];
}
