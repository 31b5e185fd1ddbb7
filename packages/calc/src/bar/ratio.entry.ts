import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { sectionFields } from "./field";
import { barStiffnessRatio, fourthPower } from "./section";

const section = z.strictObject(sectionFields);
const symbols = (index: string) => ({ symbols: { diameter: `d${index}`, bore: `b${index}` } });

export const barRatioComputation = defineComputation({
  name: "bar.ratio",
  title: "One anti-roll bar against another",
  summary: "How many times as stiff a bar becomes when only its section changes.",
  input: z.object({ before: section, after: section }),
  outputs: {
    ratio: { label: "Stiffness after over before", dimension: "ratio" },
    change: { how: ["Δr", "r − 1"], label: "Change of stiffness", dimension: "ratio", unit: "%" },
  },
  source: [
    {
      title: "Shigley, Mechanical Engineering Design",
      locus: "torsion of round bars, J = πd⁴/32",
      status: "read-formula",
    },
    { title: "11/16 in against 5/8 in is (11/16 ÷ 5/8)⁴", status: "common practice, no source" },
  ],
  validity:
    "Round bars or tubes of the same shape, arms, material and mounting. Soft links and bushes bring the ratio on the car nearer to 1.",
  example: { before: { diameter: "16 mm" }, after: { diameter: "20 mm" } },
  compute({ before, after }) {
    const ratio = barStiffnessRatio(before, after);
    const working = () => [
      ...givenSteps(section, before, { ...symbols("₁"), prefix: "Before: " }),
      ...givenSteps(section, after, { ...symbols("₂"), prefix: "After: " }),
      ...worked([
        ["Δ₁", "Before", "d₁⁴ − b₁⁴", fourthPower(before), "secondMoment", "mm⁴"],
        ["Δ₂", "After", "d₂⁴ − b₂⁴", fourthPower(after), "secondMoment", "mm⁴"],
        ["r", "Ratio", "Δ₂/Δ₁", ratio, "ratio"],
      ]),
    ];
    return { outputs: { ratio, change: ratio - 1 }, working, warnings: [] };
  },
});
