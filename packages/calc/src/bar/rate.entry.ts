import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { type Bar, type BarCompliance, barCompliance } from "./compliance";
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
    rateOneEndHeld: { how: ["k₁", "k/2"], label: "Rate with one end held", dimension: "rate", unit: "N/mm" },
    wheelRate: { label: "Rate at the wheel in roll", dimension: "rate", unit: "N/mm" },
    rollRate: { label: "Roll rate", dimension: "angularRate", unit: "N·m/°" },
    softening: {
      how: ["f", "(x_b + x_l)/(x_T + x_A + x_M + x_b + x_l)"],
      label: "Share of the movement taken by bushes and links",
      dimension: "ratio",
      unit: "%",
    },
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
    const working = () => [
      ...givenSteps(input, given, { symbols: { ...barSymbols, motionRatio: "MR", track: "t" } }),
      ...assumedSteps(given, moduli),
      ...complianceSteps(bar, compliance),
      ...worked([
        ["k", "Rate at the bar end", "F/(x_T + x_A + x_M + x_b + x_l)", rate, "rate", "N/mm", convention],
        ["k_w", "Rate at the wheel", "k · MR²", wheelRate, "rate", "N/mm"],
        ["K", "Roll rate", "k_w · t²/2", rollRate, "angularRate", "N·m/°"],
      ]),
    ];
    return {
      outputs: { rate, rateOneEndHeld: rate / 2, wheelRate, rollRate, softening },
      working,
      warnings: shapeWarnings(given),
    };
  },
});

const convention =
  "Both ends move oppositely; with one end held it is half of this, which many tables print.";

/** Movement of one end under 1 kN at each, part by part: comparable at a glance. */
function complianceSteps({ section }: Bar, of: BarCompliance): WorkingStep[] {
  const force = 1000;
  const bending = "F·([(s+e)³ − s³]/3 + (s+e)²·S/6)/(E·I), s = √(C² − A²), e = (B − S)/2";
  return worked([
    [
      "J",
      "Polar second moment",
      "π(d⁴ − b⁴)/32; I = J/2",
      barPolarSecondMoment(section),
      "secondMoment",
      "mm⁴",
    ],
    [
      "x_T",
      "Movement of one end at 1 kN: twist of the middle",
      "F·A²·B/(2·G·J)",
      of.torsion * force,
      "length",
      "mm",
    ],
    ["x_A", "… bending of the arm", "F·C³/(3·E·I)", of.armBending * force, "length", "mm"],
    ["x_M", "… bending of the middle", bending, of.middleBending * force, "length", "mm"],
    ["x_b", "… mounting bushes", "F·((B + 2s)/S)²/k_m", of.bushes * force, "length", "mm"],
    ["x_l", "… drop link", "F/k_l", of.links * force, "length", "mm"],
  ]);
}
