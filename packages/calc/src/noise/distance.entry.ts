import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { acoustics, distanceField, levelField, noiseCaution } from "./field";
import { distanceDrop, levelAtDistance } from "./level";

const input = z.object({
  level: levelField("Level"),
  from: distanceField("Measured at"),
  to: distanceField("Wanted at"),
});
/** Nearer than this to an exhaust the outlet is no point, m (common practice, no source). */
const nearField = 1;

export const noiseDistanceComputation = defineComputation({
  name: "noise.distance",
  title: "Sound level at another distance",
  summary: "About how loud a source is at another distance in the open.",
  input,
  outputs: {
    level: { label: "Level there", dimension: "soundLevel", unit: "dB(A)", decimals: 1 },
    drop: { label: "Lower by", dimension: "soundLevel", unit: "dB", decimals: 2 },
  },
  source: [acoustics],
  validity:
    "A small source in the open, far field, without reflecting walls, wind or other sources. From half a metre it is an estimate, never a substitute for measuring at the distance asked for.",
  caution: noiseCaution,
  example: { level: "92 dB(A)", from: "2 m", to: "20 m" },
  compute(given) {
    const drop = distanceDrop(given.from, given.to);
    const level = levelAtDistance(given);
    const working = () => [
      ...givenSteps(input, given, { symbols: { level: "L1", from: "r1", to: "r2" } }),
      ...worked([
        [
          "ΔL",
          "Lower by",
          "20·log₁₀(r2/r1)",
          drop,
          "soundLevel",
          "dB",
          "6 dB for each doubling of the distance",
        ],
        ["L2", "Level there", "L1 − ΔL", level, "soundLevel", "dB(A)"],
      ]),
    ];
    const near = Math.min(given.from, given.to) < nearField;
    return {
      outputs: { level, drop },
      working,
      warnings: near ? ["Less than a metre from the source is near field: an estimate only."] : [],
    };
  },
});
