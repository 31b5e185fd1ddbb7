import { z } from "zod";
import { type Computed, defineComputation, type Outputs } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { geometrySource, rimDiameter, toe } from "./field";
import { angleFromRim, distanceAtRim } from "./rim";

const outputs = {
  anglePerWheel: { label: "Toe-in per wheel", dimension: "angle", unit: "'", decimals: 2 },
  totalAngle: { how: ["θ_t", "2·θ"], label: "Total toe-in", dimension: "angle", unit: "'", decimals: 2 },
  distancePerWheel: { label: "Toe-in per wheel at the rim", dimension: "length", unit: "mm", decimals: 2 },
  totalDistance: {
    how: ["d_t", "2·d"],
    label: "Total toe-in at the rim",
    dimension: "length",
    unit: "mm",
    decimals: 2,
  },
} as const satisfies Outputs;

const validity =
  "Both wheels standing alike; the distance is the difference between front and rear of the rim at hub height. Exact at any angle, whatever the camber.";

function answer(perWheel: number, diameter: number, formula: string): Computed<typeof outputs> {
  const distance = distanceAtRim(perWheel, diameter);
  return {
    outputs: {
      anglePerWheel: perWheel,
      totalAngle: 2 * perWheel,
      distancePerWheel: distance,
      totalDistance: 2 * distance,
    },
    working: () =>
      worked([
        ["θ", "Toe-in per wheel", formula, perWheel, "angle", "'"],
        ["d", "Distance per wheel", "D·sin θ", distance, "length", "mm", "positive is toe-in"],
        ["d", "Distance per wheel in inches", "D·sin θ", distance, "length", "in"],
      ]),
    warnings: [],
  };
}

const atRimInput = z.object({ toeIn: toe({ label: "Toe" }), rimDiameter });

/** Catalogue entry `alignment.toeAtRim`. */
export const toeAtRimComputation = defineComputation({
  name: "alignment.toeAtRim",
  title: "Toe angle as a distance at the rim",
  summary: "What a toe angle measures at the rim, per wheel and in total.",
  input: atRimInput,
  outputs,
  source: [geometrySource],
  validity,
  example: { toeIn: "0°20' toe-in total", rimDiameter: "15 in" },
  compute(given) {
    const { working, ...rest } = answer(given.toeIn, given.rimDiameter, "given");
    const symbols = { toeIn: "θ", rimDiameter: "D" };
    return { ...rest, working: () => [...givenSteps(atRimInput, given, { symbols }), ...working()] };
  },
});

const fromRimInput = z.object({
  distance: quantity("length", { label: "Toe at the rim", help: "Positive is toe-in", unit: "mm" }),
  share: z.enum(["per side", "total"]).meta({ title: "Per side or total" }),
  rimDiameter,
});

/** Catalogue entry `alignment.toeFromRim`. */
export const toeFromRimComputation = defineComputation({
  name: "alignment.toeFromRim",
  title: "Toe distance at the rim as an angle",
  summary: "The toe angle that a distance at the rim stands for, per wheel and in total.",
  input: fromRimInput,
  outputs,
  source: [geometrySource],
  validity,
  example: { distance: "1/16 in", share: "total", rimDiameter: "13 in" },
  compute(given) {
    const total = given.share === "total";
    const angle = angleFromRim(total ? given.distance / 2 : given.distance, given.rimDiameter);
    const { working, ...rest } = answer(angle, given.rimDiameter, total ? "asin(d/(2·D))" : "asin(d/D)");
    const symbols = { distance: "d", share: "share", rimDiameter: "D" };
    return { ...rest, working: () => [...givenSteps(fromRimInput, given, { symbols }), ...working()] };
  },
});

const camberInput = z.object({
  camber: quantity("angle", { label: "Camber", min: -Math.PI / 4, max: Math.PI / 4, unit: "°" }),
  rimDiameter,
});

/** Catalogue entry `alignment.camberAtRim`. */
export const camberAtRimComputation = defineComputation({
  name: "alignment.camberAtRim",
  title: "Camber as a distance at the rim",
  summary: "How far the top of the rim stands out from the bottom, as a plumb line shows it.",
  input: camberInput,
  outputs: {
    distance: { label: "Top of the rim out from the bottom", dimension: "length", unit: "mm", decimals: 2 },
  },
  source: [geometrySource],
  validity: "Measured square to the wheel, from a plumb line, over the rim's own diameter. Exact.",
  example: { camber: "1°", rimDiameter: "13 in" },
  compute(given) {
    const distance = distanceAtRim(given.camber, given.rimDiameter);
    return {
      outputs: { distance },
      working: () => [
        ...givenSteps(camberInput, given, { symbols: { camber: "γ", rimDiameter: "D" } }),
        ...worked([
          [
            "d",
            "Top out from the bottom",
            "D·sin γ",
            distance,
            "length",
            "mm",
            "negative: the top stands in",
          ],
        ]),
      ],
      warnings: [],
    };
  },
});
