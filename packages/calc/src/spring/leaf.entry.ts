import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "./given";
import { leafRate, leafStress } from "./leaf";
import { carbonSteel, moduliOrSteel } from "./material";
import { worked } from "./worked";

const input = z.object({
  frontLength: quantity("length", { label: "Front eye to centre bolt", above: 0, max: 2, unit: "mm" }),
  rearLength: quantity("length", { label: "Centre bolt to rear eye", above: 0, max: 2, unit: "mm" }),
  clampLength: quantity("length", {
    label: "Length held rigid by the clamp",
    help: "Between the U-bolts; less where the seat is cushioned, 0 for none",
    min: 0,
    max: 0.5,
    unit: "mm",
  }),
  width: quantity("length", { label: "Leaf width", above: 0, max: 0.3, unit: "mm" }),
  thickness: quantity("length", { label: "Leaf thickness", above: 0, max: 0.05, unit: "mm" }),
  graduatedLeaves: quantity("count", { label: "Graduated leaves, master leaf included", min: 0, max: 30 }),
  fullLeaves: quantity("count", { label: "Further leaves of full length", min: 0, max: 30 }),
  load: quantity("force", { label: "Load at the axle seat", min: 0, unit: "N" }).optional(),
  youngModulus: quantity("pressure", {
    label: "Young's modulus",
    help: "Left out, that of steel",
    above: 0,
    unit: "GPa",
  }).optional(),
});

export const springLeafComputation = defineComputation({
  name: "spring.leaf",
  title: "Leaf spring rate",
  summary: "Rate and stress of a semi-elliptic leaf spring from its leaves.",
  input,
  outputs: {
    rate: { label: "Rate at the axle seat", dimension: "rate", unit: "N/mm" },
    deflection: { label: "Deflection under the load", dimension: "length", unit: "mm" },
    graduatedStress: { label: "Bending stress, graduated leaves", dimension: "pressure", unit: "MPa" },
    fullStress: {
      how: ["σ_f", "18·W·a·b/((a+b)·w·t²(3n_f + 2n_g)), where there are full-length leaves"],
      label: "Bending stress, full-length leaves",
      dimension: "pressure",
      unit: "MPa",
    },
  },
  source: [
    {
      title: "Laminated springs in machine-design handbooks: 18·P·l/(b·t²(3n_f + 2n_g))",
      status: "read-formula",
    },
    { title: "SAE Spring Design Manual", locus: "leaf springs", status: "memory" },
  ],
  validity:
    "Leaves of one width and thickness, well graduated, without friction or preset; rate about the loaded position, shackle near square to the spring.",
  caution: "Rust between leaves and broken leaves change rate and strength; a leaf with a crack is scrap.",
  example: {
    frontLength: "560 mm",
    rearLength: "610 mm",
    clampLength: "90 mm",
    width: "50 mm",
    thickness: "6 mm",
    graduatedLeaves: 5,
    fullLeaves: 0,
    load: "1900 N",
  },
  compute(given) {
    const { young } = moduliOrSteel({ young: given.youngModulus });
    const leaf = { ...given, young };
    const rate = leafRate(leaf);
    const stress = given.load === undefined ? null : leafStress(leaf, given.load);
    const deflection = given.load === undefined ? null : given.load / rate;
    const graduated = given.graduatedLeaves > 0 ? (stress?.graduated ?? null) : null;
    const full = given.fullLeaves > 0 ? (stress?.full ?? null) : null;
    const working = () => [
      ...givenSteps(input, given, {
        symbols: {
          frontLength: "a₀",
          rearLength: "b₀",
          clampLength: "c",
          width: "w",
          thickness: "t",
          graduatedLeaves: "n_g",
          fullLeaves: "n_f",
          load: "W",
          youngModulus: "E",
        },
      }),
      ...worked([
        [
          "E",
          "Young's modulus",
          "taken: steel, Shigley Table A-5",
          given.youngModulus === undefined ? carbonSteel.young : null,
          "pressure",
          "GPa",
        ],
        ["a", "Free front half", "a₀ − c/2", given.frontLength - given.clampLength / 2, "length", "mm"],
        ["b", "Free rear half", "b₀ − c/2", given.rearLength - given.clampLength / 2, "length", "mm"],
        ["k", "Rate", "(a+b)²/(b²/k_a + a²/k_b), k_i = E·w·t³(3n_f + 2n_g)/(12·i³)", rate, "rate", "N/mm"],
        ["δ", "Deflection", "W/k", deflection, "length", "mm"],
        [
          "σ_g",
          "Bending stress, graduated",
          "12·W·a·b/((a+b)·w·t²(3n_f + 2n_g))",
          graduated,
          "pressure",
          "MPa",
        ],
        ["σ_f", "Bending stress, full-length", "1.5·σ_g", full, "pressure", "MPa"],
      ]),
    ];
    return {
      outputs: { rate, deflection, graduatedStress: graduated, fullStress: full },
      working,
      warnings: [],
    };
  },
});
