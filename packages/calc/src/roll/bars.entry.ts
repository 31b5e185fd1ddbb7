import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { givenSteps } from "../spring/given";
import { type WorkedLine, worked } from "../spring/worked";
import { barFittings, compareBars } from "./compare";
import { bodySteps } from "./cornering.entry";
import {
  axleFields,
  axleSteps,
  carOf,
  cgHeightField,
  exampleAxles,
  rollSources,
  rollValidity,
} from "./field";

const axle = z.strictObject(axleFields);
const input = z.object({ front: axle, rear: axle, cgHeight: cgHeightField });
const gradient = (label: string) =>
  ({
    label: `Roll gradient, ${label}`,
    dimension: "anglePerAcceleration",
    unit: "°/g",
    decimals: 2,
  }) as const;
const share = (label: string) =>
  ({ label: `Front share of load transfer, ${label}`, dimension: "ratio", unit: "%", decimals: 1 }) as const;
const fittingWords = {
  both: "both bars",
  frontOnly: "front bar only",
  rearOnly: "rear bar only",
  none: "no bar",
} as const;

export const rollBarsComputation = defineComputation({
  name: "roll.bars",
  title: "With and without each anti-roll bar",
  summary:
    "Roll gradient and front share of load transfer of the same car with both bars, with either one and with none.",
  input,
  outputs: {
    bothGradient: gradient(fittingWords.both),
    bothShare: { ...share(fittingWords.both), how: ["λ_fr", "ΔW_f over both, with the bars fitted as said"] },
    frontOnlyGradient: gradient(fittingWords.frontOnly),
    frontOnlyShare: {
      ...share(fittingWords.frontOnly),
      how: ["λ_f", "ΔW_f over both, with the bars fitted as said"],
    },
    rearOnlyGradient: gradient(fittingWords.rearOnly),
    rearOnlyShare: {
      ...share(fittingWords.rearOnly),
      how: ["λ_r", "ΔW_f over both, with the bars fitted as said"],
    },
    noneGradient: gradient(fittingWords.none),
    noneShare: { ...share(fittingWords.none), how: ["λ_0", "ΔW_f over both, with the bars fitted as said"] },
  },
  source: rollSources,
  validity: `${rollValidity} Figures are for small lateral acceleration.`,
  caution:
    "Taking a bar off changes the balance of the car at once. Try it in small steps, off the public road.",
  example: { ...exampleAxles, cgHeight: "440 mm" },
  compute(given) {
    const car = carOf(given);
    const compared = compareBars(car);
    const rows = barFittings.flatMap((fitting, index): WorkedLine[] => [
      [
        `φ′_${index + 1}`,
        `Roll gradient, ${fittingWords[fitting]}`,
        "as φ′, with the bars said",
        compared[fitting].gradient,
        "anglePerAcceleration",
        "°/g",
      ],
      [
        `λ_${index + 1}`,
        `Front share, ${fittingWords[fitting]}`,
        "as λ₀, with the bars said",
        compared[fitting].frontTransferShare,
        "ratio",
        "%",
      ],
    ]);
    const working = () => [
      ...axleSteps(axle, given),
      ...givenSteps(input, given, { symbols: { cgHeight: "h" } }),
      ...bodySteps(car),
      ...worked(rows),
    ];
    const outputs = {
      bothGradient: compared.both.gradient,
      bothShare: compared.both.frontTransferShare,
      frontOnlyGradient: compared.frontOnly.gradient,
      frontOnlyShare: compared.frontOnly.frontTransferShare,
      rearOnlyGradient: compared.rearOnly.gradient,
      rearOnlyShare: compared.rearOnly.frontTransferShare,
      noneGradient: compared.none.gradient,
      noneShare: compared.none.frontTransferShare,
    };
    return { outputs, working, warnings: [] };
  },
});
