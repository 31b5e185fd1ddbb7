import { z } from "zod";
import { rollRateOfWheelRate } from "../bar/rate";
import { defineComputation } from "../catalogue/computation";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { axleRollRate } from "./car";
import { assumed, axleSymbols, rollSources, stiffnessFields } from "./field";

const input = z.object(stiffnessFields);

export const rollAxleComputation = defineComputation({
  name: "roll.axle",
  title: "Roll rate of an axle",
  summary: "How an axle's springs and anti-roll bar share in resisting roll.",
  input,
  outputs: {
    rollRate: { label: "Roll rate of springs and bar", dimension: "angularRate", unit: "N·m/°" },
    springRollRate: { label: "Roll rate of the springs", dimension: "angularRate", unit: "N·m/°" },
    barRollRate: { label: "Roll rate of the bar", dimension: "angularRate", unit: "N·m/°" },
    barShare: { how: ["λ_b", "K_b/K"], label: "Share of the bar", dimension: "ratio", unit: "%" },
    onTyres: { label: "Roll rate with the tyres in series", dimension: "angularRate", unit: "N·m/°" },
  },
  source: rollSources,
  validity:
    "Small roll about the design position; linear springs, bar and tyres; motion ratios already in the wheel rates.",
  example: { track: "1300 mm", springWheelRate: "14.5 N/mm", barWheelRate: "7.2 N/mm", tyreRate: "180 N/mm" },
  compute(given) {
    const { springs, bar, total, barShare } = axleRollRate({
      ...given,
      barWheelRate: given.barWheelRate ?? 0,
    });
    const tyres = given.tyreRate === undefined ? null : rollRateOfWheelRate(given.tyreRate, given.track);
    const onTyres = tyres === null ? null : 1 / (1 / total + 1 / tyres);
    const working = () => [
      ...givenSteps(input, given, { symbols: axleSymbols }),
      ...assumed(given),
      ...worked([
        [
          "K_s",
          "Roll rate of the springs",
          "k_s·s²/2, s = t where independent",
          springs,
          "angularRate",
          "N·m/°",
        ],
        [
          "K_b",
          "Roll rate of the bar",
          "k_b·t²/2",
          bar,
          "angularRate",
          "N·m/°",
          "k_b with both wheels moving oppositely",
        ],
        ["K", "Roll rate together", "K_s + K_b", total, "angularRate", "N·m/°"],
        ["K_t", "Roll rate of the tyres", "k_t·t²/2", tyres, "angularRate", "N·m/°"],
        ["K_K", "With the tyres in series", "1/(1/K + 1/K_t)", onTyres, "angularRate", "N·m/°"],
      ]),
    ];
    return {
      outputs: { rollRate: total, springRollRate: springs, barRollRate: bar, barShare, onTyres },
      working,
      warnings: [],
    };
  },
});
