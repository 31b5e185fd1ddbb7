import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { type BarCompliance, barCompliance } from "./compliance";
import { assumedSteps, barFields, barOf, barSources, barSymbols, shapeWarnings } from "./field";
import { barWheelRate, rollRateOfWheelRate } from "./rate";
import { barPolarSecondMoment } from "./section";

const input = z.object({
  ...barFields,
  motionRatio: quantity("ratio", {
    label: "Motion ratio",
    help: "Bar-end movement per wheel movement, usually below 1; left out, nothing is said at the wheel",
    above: 0,
    max: 2,
  }).optional(),
  track: quantity("length", { label: "Track", above: 0, max: 3, unit: "mm" }).optional(),
});

export const barRateComputation = defineComputation({
  name: "bar.rate",
  title: "Anti-roll bar rate",
  summary:
    "Rate of a U-shaped anti-roll bar at its end, at the wheel and in roll, with what links and bushes take away.",
  input,
  outputs: {
    rate: { label: "Rate at the bar end, both ends moving oppositely", dimension: "rate", unit: "N/mm" },
    rateOneEndHeld: { label: "Rate with one end held", dimension: "rate", unit: "N/mm" },
    wheelRate: { label: "Rate at the wheel in roll", dimension: "rate", unit: "N/mm" },
    rollRate: { label: "Roll rate", dimension: "angularRate", unit: "N·m/°" },
    softening: { label: "Share of the movement taken by bushes and links", dimension: "ratio", unit: "%" },
  },
  source: barSources,
  validity:
    "A round bar or tube with a straight middle and two straight arms of the same section, leaning outwards if at all; small movements; links square to the levers.",
  example: {
    diameter: "16 mm",
    middleLength: "900 mm",
    leverLength: "200 mm",
    armLength: "215 mm",
    bushSpacing: "700 mm",
    linkRate: "250 N/mm",
    motionRatio: 0.6,
    track: "1300 mm",
  },
  compute(given) {
    const { bar, flexibility, moduli } = barOf(given);
    const compliance = barCompliance(bar, flexibility);
    const rate = 1 / compliance.total;
    const wheelRate = given.motionRatio === undefined ? null : barWheelRate(rate, given.motionRatio);
    const rollRate =
      wheelRate === null || given.track === undefined ? null : rollRateOfWheelRate(wheelRate, given.track);
    const softening = (compliance.bushes + compliance.links) / compliance.total;
    const working = [
      ...givenSteps(input, given, { symbols: { ...barSymbols, motionRatio: "MR", track: "t" } }),
      ...assumedSteps(given, moduli),
      {
        symbol: "J",
        label: "Polar second moment",
        formula: "π(d⁴ − b⁴)/32; I = J/2",
        value: barPolarSecondMoment(bar.section),
        dimension: "secondMoment",
        unit: "mm⁴",
      },
      ...complianceSteps(compliance),
      {
        symbol: "k",
        label: "Rate at the bar end",
        formula: "F/(x_T + x_A + x_M + x_b + x_l)",
        value: rate,
        dimension: "rate",
        unit: "N/mm",
        note: "Both ends move oppositely; with one end held it is half of this, which many tables print.",
      },
      ...(wheelRate === null
        ? []
        : [
            {
              symbol: "k_w",
              label: "Rate at the wheel",
              formula: "k · MR²",
              value: wheelRate,
              dimension: "rate",
              unit: "N/mm",
            } as const,
          ]),
      ...(rollRate === null
        ? []
        : [
            {
              symbol: "K",
              label: "Roll rate",
              formula: "k_w · t²/2",
              value: rollRate,
              dimension: "angularRate",
              unit: "N·m/°",
            } as const,
          ]),
    ] satisfies WorkingStep[];
    return {
      outputs: { rate, rateOneEndHeld: rate / 2, wheelRate, rollRate, softening },
      working,
      warnings: shapeWarnings(given),
    };
  },
});

/** Movement of one end under 1 kN at each, part by part, in millimetres: comparable at a glance. */
function complianceSteps(compliance: BarCompliance): WorkingStep[] {
  const perKilonewton = (part: number): number => part * 1000;
  const parts = [
    ["x_T", "Movement of one end under 1 kN: twist of the middle", "F·A²·B/(2·G·J)", compliance.torsion],
    ["x_A", "… bending of the arm", "F·C³/(3·E·I)", compliance.armBending],
    [
      "x_M",
      "… bending of the middle, s = √(C² − A²), e = (B − S)/2",
      "F·([(s+e)³ − s³]/3 + (s+e)²·S/6)/(E·I)",
      compliance.middleBending,
    ],
    ["x_b", "… mounting bushes", "F·((B + 2s)/S)²/k_m", compliance.bushes],
    ["x_l", "… drop link", "F/k_l", compliance.links],
  ] as const;
  return parts.map(([symbol, label, formula, value]) => ({
    symbol,
    label,
    formula,
    value: perKilonewton(value),
    dimension: "length",
    unit: "mm",
  }));
}
