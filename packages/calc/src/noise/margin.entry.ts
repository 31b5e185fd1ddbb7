import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { meanOf } from "../measurement/series";
import { givenSteps } from "../spring/given";
import { type WorkedLine, worked } from "../spring/worked";
import { differenceField, levelField, mostLevels, noiseCaution } from "./field";
import { wantedBackgroundMargin } from "./level";
import { judgeLevel, levelUncertainty } from "./margin";

const input = z.object({
  readings: z
    .array(levelField("Reading"))
    .min(1)
    .max(mostLevels)
    .meta({ title: "Readings", description: "Of each outlet, one after another; the highest counts" }),
  limit: levelField("Limit", "Itself allowed; at the distance and engine speed of the readings"),
  meterAccuracy: differenceField(
    "Accuracy of the meter, ±",
    "From its certificate; IEC 61672-1:2013 allows about 0.7 dB for class 1 and 1.0 dB for class 2 at 1 kHz",
  ).optional(),
  otherUncertainty: differenceField(
    "Standard uncertainty of the rest",
    "Place and angle of the microphone, wind, engine speed",
  ).optional(),
  background: levelField("Background").optional(),
});
type Input = z.output<typeof input>;
/** Readings of one test must agree to this, dB (ISO 5130, from memory). */
const agreement = 2;
const words = { inside: "inside", outside: "outside", cannotTell: "cannot tell" } as const;

export const noiseMarginComputation = defineComputation({
  name: "noise.margin",
  title: "Noise against a limit",
  summary:
    "How far the highest reading lies below its limit, and whether that is proven with the meter's uncertainty.",
  input,
  outputs: {
    level: { label: "Level that counts", dimension: "soundLevel", unit: "dB(A)", decimals: 1 },
    margin: { label: "Below the limit by", dimension: "soundLevel", unit: "dB", decimals: 1 },
    expandedUncertainty: {
      how: ["U", "2·√(a²/3 + u²)"],
      label: "Expanded uncertainty, U (k = 2)",
      dimension: "soundLevel",
      unit: "dB",
      decimals: 1,
    },
    verdict: { label: "Against the limit", dimension: "text" },
    spread: {
      how: ["R", "greatest less least reading"],
      label: "Readings differ by",
      dimension: "soundLevel",
      unit: "dB",
      decimals: 1,
    },
  },
  source: [
    { title: "ISO 14253-1, one upper limit", status: "memory" },
    {
      title:
        "National competition rules: each outlet measured, the highest counts; background 10 dB(A) below",
      status: "read",
    },
    { title: "ISO 5130:2007, three readings within 2 dB", status: "memory" },
    { title: "IEC 61672-1:2013, acceptance limits at 1 kHz", status: "read" },
  ],
  validity:
    "Readings by the method and at the distance the limit is for. Without the meter's accuracy nothing is proven.",
  caution: noiseCaution,
  example: {
    readings: ["96.4 dB(A)", "97.1 dB(A)", "96.8 dB(A)"],
    limit: "100 dB(A)",
    meterAccuracy: "1 dB",
    otherUncertainty: "0.5 dB",
    background: "71 dB(A)",
  },
  compute(given) {
    const { readings, limit } = given;
    const level = Math.max(...readings);
    const spread = level - Math.min(...readings);
    const expandedUncertainty = levelUncertainty(given);
    const verdict = words[judgeLevel({ level, limit, expandedUncertainty })];
    const working = (): WorkingStep[] => [
      ...worked(
        readings.map(
          (one, index): WorkedLine => [
            `L${index + 1}`,
            `Reading ${index + 1}`,
            "given",
            one,
            "soundLevel",
            "dB(A)",
          ],
        ),
      ),
      ...givenSteps(input, given, {
        symbols: { limit: "L_max", meterAccuracy: "a", otherUncertainty: "u", background: "L_b" },
      }),
      ...(expandedUncertainty === null
        ? [{ symbol: "a", label: "Accuracy of the meter", value: "not given: nothing can be proven" }]
        : []),
      ...worked([
        ["L", "Level that counts", "the highest reading", level, "soundLevel", "dB(A)"],
        ["L̄", "Mean of the readings", "ΣL/n, for comparison", meanOf(readings), "soundLevel", "dB(A)"],
        ["m", "Below the limit by", "L_max − L", limit - level, "soundLevel", "dB"],
        ["U", "Expanded uncertainty", "2·√(a²/3 + u²)", expandedUncertainty, "soundLevel", "dB"],
      ]),
      {
        symbol: "verdict",
        label: "Against the limit",
        formula: "inside: L + U ≤ L_max; outside: L − U > L_max",
        value: verdict,
      },
    ];
    const outputs = { level, margin: limit - level, expandedUncertainty, verdict, spread };
    return { outputs, working, warnings: warningsOf(given, { level, spread }) };
  },
});

function warningsOf(
  { background, readings }: Input,
  { level, spread }: { level: number; spread: number },
): string[] {
  const warnings: string[] = [];
  if (spread > agreement + 1e-9)
    warnings.push("Readings differ by more than 2 dB: the test is usually repeated.");
  if (readings.length < 3) warnings.push("Fewer than three readings: ISO 5130 takes three.");
  if (background !== undefined && level - background < wantedBackgroundMargin)
    warnings.push("The background is less than 10 dB below the reading: it counts as part of it.");
  return warnings;
}
