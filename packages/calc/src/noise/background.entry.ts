import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { acoustics, levelField, noiseCaution } from "./field";
import { backgroundCorrection, levelWithoutBackground, wantedBackgroundMargin } from "./level";

const input = z.object({
  reading: levelField("Reading with the engine running"),
  background: levelField("Background with it stopped"),
});

export const noiseBackgroundComputation = defineComputation({
  name: "noise.background",
  title: "Background noise",
  summary: "How much the background added to a reading, and what the source alone is.",
  input,
  outputs: {
    level: { label: "Source alone", dimension: "soundLevel", unit: "dB(A)", decimals: 1 },
    correction: { label: "Added by the background", dimension: "soundLevel", unit: "dB", decimals: 2 },
    margin: { label: "Reading above background", dimension: "soundLevel", unit: "dB", decimals: 1 },
    verdict: {
      how: ["verdict", "reading above background: 10 dB and more is quiet enough"],
      label: "Background",
      dimension: "text",
    },
  },
  source: [
    acoustics,
    { title: "ISO 3746, least difference of 3 dB", status: "memory" },
    { title: "National competition rules, background at least 10 dB(A) below", status: "read" },
  ],
  validity:
    "A steady background. Less than 3 dB above it nothing is worked out; rules ask for 10 dB and know no correction.",
  caution: noiseCaution,
  example: { reading: "96 dB(A)", background: "84 dB(A)" },
  compute(given) {
    const margin = given.reading - given.background;
    const correction = backgroundCorrection(margin);
    const level = levelWithoutBackground(given.reading, given.background);
    const quiet = margin >= wantedBackgroundMargin;
    const working = () => [
      ...givenSteps(input, given, { symbols: { reading: "L_m", background: "L_b" } }),
      ...worked([
        ["ΔL", "Reading above background", "L_m − L_b", margin, "soundLevel", "dB"],
        ["K", "Added by the background", "−10·log₁₀(1 − 10^(−ΔL/10))", correction, "soundLevel", "dB"],
        ["L", "Source alone", "L_m − K", level, "soundLevel", "dB(A)"],
      ]),
    ];
    const verdict = quiet ? "quiet enough" : "too loud: a test wants 10 dB between";
    return {
      outputs: { level, correction, margin, verdict },
      working,
      warnings: quiet
        ? []
        : ["The background is less than 10 dB below the reading: measure again in quieter surroundings."],
    };
  },
});
