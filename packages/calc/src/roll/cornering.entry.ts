import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { lazily } from "../catalogue/lazily";
import { standardGravity as g } from "../quantity/unit-table/unit";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import type { RollCar } from "./car";
import {
  axleFields,
  axleSteps,
  carOf,
  cgHeightField,
  exampleAxles,
  rollSources,
  rollValidity,
} from "./field";
import { rollFigures, rollGradient, totalRate } from "./gradient";
import { type AxleTransfer, liftAcceleration, rollAt } from "./transfer";

const axle = z.strictObject(axleFields);
const input = z.object({
  front: axle,
  rear: axle,
  cgHeight: cgHeightField,
  acceleration: quantity("acceleration", { label: "Lateral acceleration", min: 0, max: 3 * g, unit: "g" }),
});
const wheel = (label: string) => ({ label, dimension: "force", unit: "N", decimals: 0 }) as const;

export const rollCorneringComputation = defineComputation({
  name: "roll.cornering",
  title: "Roll and load transfer in a bend",
  summary: "Roll angle, load transfer and the four wheel loads of a car at a lateral acceleration.",
  input,
  outputs: {
    angle: { label: "Roll angle", dimension: "angle", unit: "°", decimals: 2 },
    gradient: { label: "Roll gradient", dimension: "anglePerAcceleration", unit: "°/g", decimals: 2 },
    frontRollRateShare: {
      how: ["K_f/ΣK", "roll rate of the front axle over both, each with its tyres"],
      label: "Front share of the roll rate",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
    frontTransferShare: {
      how: ["λ", "ΔW_f/(ΔW_f + ΔW_r)"],
      label: "Front share of the load transfer",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
    frontTransfer: wheel("Load transfer, front"),
    rearTransfer: wheel("Load transfer, rear"),
    frontOuter: {
      ...wheel("Front outer wheel"),
      how: ["W_fo", "half of the front axle's weight with ΔW_f more"],
    },
    frontInner: {
      ...wheel("Front inner wheel"),
      how: ["W_fi", "half of the front axle's weight with ΔW_f less"],
    },
    rearOuter: {
      ...wheel("Rear outer wheel"),
      how: ["W_ro", "half of the rear axle's weight with ΔW_r more"],
    },
    rearInner: {
      ...wheel("Rear inner wheel"),
      how: ["W_ri", "half of the rear axle's weight with ΔW_r less"],
    },
    liftAt: {
      how: ["a_l", "least acceleration at which an inner wheel carries nothing"],
      label: "An inner wheel lifts at",
      dimension: "acceleration",
      unit: "g",
      decimals: 2,
    },
    liftAxle: {
      how: ["first", "the axle whose inner wheel that is"],
      label: "Which axle lifts first",
      dimension: "text",
    },
  },
  source: rollSources,
  validity: rollValidity,
  caution:
    "How the car behaves at the limit also depends on tyres, toe, camber and driver. Try changes in small steps, off the public road.",
  example: { ...exampleAxles, cgHeight: "440 mm", acceleration: "0.7 g" },
  compute(given) {
    const car = carOf(given);
    const { gradient, frontRollRateShare } = rollGradient(car);
    const { angle, axles, frontTransferShare } = rollAt(car, given.acceleration);
    const lift = lazily(() => liftAcceleration(car));
    const outputs = {
      angle,
      gradient,
      frontRollRateShare,
      frontTransferShare,
      frontTransfer: axles.front.total,
      rearTransfer: axles.rear.total,
      frontOuter: axles.front.outer,
      frontInner: axles.front.inner,
      rearOuter: axles.rear.outer,
      rearInner: axles.rear.inner,
      get liftAt() {
        return lift()?.acceleration ?? null;
      },
      get liftAxle() {
        return lift()?.axle ?? "neither below 3 g";
      },
    };
    const working = () => [
      ...axleSteps(axle, given),
      ...givenSteps(input, given, { symbols: { cgHeight: "h", acceleration: "a" } }),
      ...bodySteps(car),
      ...worked([
        ["φ", "Roll angle", "K·φ = m_s·h_s·(a·cos φ + g·sin φ), solved exactly", angle, "angle", "°"],
      ]),
      ...transferSteps("f", "Front", axles.front),
      ...transferSteps("r", "Rear", axles.rear),
    ];
    return { outputs, working, warnings: warningsOf(angle, given.acceleration) };
  },
});

/** Lines on the rolling body and on the gradient, with and without its weight. */
export function bodySteps(car: RollCar): WorkingStep[] {
  const figures = rollFigures(car);
  const { body } = figures;
  const { gradient, gradientWithoutWeight, frontTransferShare } = rollGradient(car);
  const without = "m_s·h_s/K: the weight of the rolling body left out";
  return worked([
    ["m_s", "Sprung mass", "Σ(m − m_u)", body.mass, "mass", "kg"],
    [
      "h_a",
      "Roll axis under its centre of gravity",
      "Σ(m − m_u)·h_rc/m_s",
      body.rollAxisHeight,
      "length",
      "mm",
    ],
    [
      "h_s",
      "Centre of gravity above the roll axis",
      "(Σm·h − Σm_u·h_u)/m_s − h_a",
      body.lever,
      "length",
      "mm",
    ],
    [
      "K",
      "Roll rate of the car on its tyres",
      "Σ1/(1/K_axle + 1/K_t)",
      totalRate(figures),
      "angularRate",
      "N·m/°",
    ],
    [
      "φ′₀",
      "Roll gradient without the leaning weight",
      without,
      gradientWithoutWeight,
      "anglePerAcceleration",
      "°/g",
    ],
    [
      "φ′",
      "Roll gradient",
      "m_s·h_s/(K − m_s·g·h_s) on rigid tyres",
      gradient,
      "anglePerAcceleration",
      "°/g",
    ],
    [
      "λ₀",
      "Front share of load transfer at small acceleration",
      "ΔW_f/(ΔW_f + ΔW_r)",
      frontTransferShare,
      "ratio",
      "%",
    ],
  ]);
}

function transferSteps(index: string, name: string, part: AxleTransfer): WorkingStep[] {
  const label = (words: string): string => `${name}: ${words}`;
  return worked([
    [`ΔW_e${index}`, label("through springs and bar"), "K_axle·φ/t", part.elastic, "force", "N"],
    [`ΔW_g${index}`, label("through the roll centre"), "(m − m_u)·a·h_rc/t", part.geometric, "force", "N"],
    [`ΔW_u${index}`, label("unsprung"), "m_u·a·h_u/t", part.unsprung, "force", "N"],
    [`ΔW_t${index}`, label("leaning over on its tyres"), "0 on rigid tyres", part.tipping, "force", "N"],
    [`ΔW_${index}`, label("load transfer"), "half of outer less inner wheel", part.total, "force", "N"],
  ]);
}

/** About what the best road tyres hold, m/s². */
const roadTyreLimit = 1.2 * g;
const smallRoll = (10 * Math.PI) / 180;

function warningsOf(angle: number, acceleration: number): string[] {
  const warnings: string[] = [];
  if (Math.abs(angle) > smallRoll)
    warnings.push("More than 10° of roll: springs and roll centres no longer behave as assumed.");
  if (acceleration > roadTyreLimit) warnings.push("More than 1.2 g: beyond what road tyres hold.");
  return warnings;
}
