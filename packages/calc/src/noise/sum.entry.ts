import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { type WorkedLine, worked } from "../spring/worked";
import { acoustics, levelField, mostLevels, noiseCaution } from "./field";
import { sumOfLevels } from "./level";

export const noiseSumComputation = defineComputation({
  name: "noise.sum",
  title: "Several sources together",
  summary: "How loud several sources are together at one place.",
  input: z.object({
    levels: z
      .array(levelField("Level of one source"))
      .min(1)
      .max(mostLevels)
      .meta({ title: "Levels of the sources" }),
  }),
  outputs: {
    level: { label: "Together", dimension: "soundLevel", unit: "dB(A)", decimals: 1 },
    aboveLoudest: { label: "Above the loudest alone", dimension: "soundLevel", unit: "dB", decimals: 2 },
  },
  source: [acoustics],
  validity:
    "Independent sources, each level at the same place. Two outlets of one engine are not quite independent.",
  caution: noiseCaution,
  example: { levels: ["98 dB(A)", "98 dB(A)", "90 dB(A)"] },
  compute({ levels }) {
    const level = sumOfLevels(levels);
    const aboveLoudest = level - Math.max(...levels);
    const working = () =>
      worked([
        ...levels.map(
          (one, index): WorkedLine => [
            `L${index + 1}`,
            `Source ${index + 1}`,
            "given",
            one,
            "soundLevel",
            "dB(A)",
          ],
        ),
        ["L", "Together", "10·log₁₀ Σ10^(L/10)", level, "soundLevel", "dB(A)"],
        [
          "ΔL",
          "Above the loudest alone",
          `L − max(${levels.map((_, index) => `L${index + 1}`).join(", ")})`,
          aboveLoudest,
          "soundLevel",
          "dB",
        ],
      ]);
    return { outputs: { level, aboveLoudest }, working, warnings: [] };
  },
});
