import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { rollSources } from "./field";

const rate = (label: string) =>
  quantity("angularRate", { label, help: "Springs and bar together", min: 0, max: 1e6, unit: "N·m/°" });

const input = z.object({ frontRollRate: rate("Roll rate, front"), rearRollRate: rate("Roll rate, rear") });

export const rollShareComputation = defineComputation({
  name: "roll.share",
  title: "Front share of the roll rate",
  summary:
    "How front and rear axle share in holding the car against roll, where masses and heights are not known.",
  input,
  outputs: {
    frontShare: { label: "Front share of the roll rate", dimension: "ratio", unit: "%" },
    rearShare: { label: "Rear share of the roll rate", dimension: "ratio", unit: "%" },
    total: { label: "Roll rate of the car", dimension: "angularRate", unit: "N·m/°" },
  },
  source: rollSources,
  validity:
    "The elastic part only: what the roll centres and the unsprung masses transfer is left out. A stiff body; linear springs and bars; rigid tyres.",
  example: { frontRollRate: "310 N·m/°", rearRollRate: "260 N·m/°" },
  compute(given) {
    const total = given.frontRollRate + given.rearRollRate;
    const share = total === 0 ? null : given.frontRollRate / total;
    return {
      outputs: { frontShare: share, rearShare: share === null ? null : 1 - share, total },
      working: () => [
        ...givenSteps(input, given, { symbols: { frontRollRate: "K_f", rearRollRate: "K_r" } }),
        ...worked([
          ["K", "Roll rate of the car", "K_f + K_r", total, "angularRate", "N·m/°"],
          ["ε", "Front share", "K_f/K", share, "ratio", "%"],
          ["1 − ε", "Rear share", "K_r/K", share === null ? null : 1 - share, "ratio", "%"],
          [
            "Δε",
            "Shift for one more hundredth of K_f",
            "(1 − ε)·ε/100",
            share === null ? null : ((1 - share) * share) / 100,
            "ratio",
            "%",
          ],
        ]),
      ],
      warnings: total === 0 ? ["Nothing holds the car against roll: there is no share."] : [],
    };
  },
});
