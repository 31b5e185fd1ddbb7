import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { kindFields, readingList } from "./field";
import { readerOf, readingStep } from "./reader";
import { repeatability } from "./series";
import { gum, iso5725 } from "./source";

const input = z.object({ ...kindFields, readings: readingList("Readings, each after setting up afresh") });

export const repeatabilityComputation = defineComputation({
  name: "measurement.repeatability",
  title: "Repeatability of a series",
  summary: "Mean, scatter and repeatability limit of readings of the same thing by the same hand.",
  input,
  outputs: {
    mean: { label: "Mean", dimension: "asEntered" },
    standardDeviation: { label: "Standard deviation of a single reading, s", dimension: "asEntered" },
    uncertaintyOfMean: { label: "Standard uncertainty of the mean", dimension: "asEntered" },
    range: { how: ["R", "greatest less least reading"], label: "Range", dimension: "asEntered" },
    repeatabilityLimit: {
      label: "Two readings differ by less than, 95 times in 100",
      dimension: "asEntered",
    },
    count: { how: ["n", "readings given"], label: "Readings", dimension: "count", decimals: 0 },
  },
  source: [gum, iso5725],
  validity:
    "The same hand, instrument and car in one session, set up afresh for each reading; about normal scatter.",
  example: { dimension: "angle", readings: ["0°12'", "0°14'", "0°11'", "0°13'", "0°12'"] },
  compute(given) {
    const reader = readerOf(given, given.readings);
    const of = repeatability(given.readings.map((raw, index) => reader.read(raw, `readings.${index}`).si));
    const working = () => [
      readingStep(reader, ["x̄", "Mean", "Σx/n", of.mean], "value"),
      readingStep(reader, ["s", "Standard deviation", "√(Σ(x − x̄)²/(n − 1))", of.standardDeviation]),
      readingStep(reader, ["u", "Standard uncertainty of the mean", "s/√n", of.uncertaintyOfMean]),
      readingStep(reader, ["r", "Repeatability limit", "1.96·√2·s", of.repeatabilityLimit]),
    ];
    const outputs = {
      mean: reader.value(of.mean),
      standardDeviation: reader.differenceValue(of.standardDeviation),
      uncertaintyOfMean: reader.differenceValue(of.uncertaintyOfMean),
      range: reader.differenceValue(of.range),
      repeatabilityLimit: reader.differenceValue(of.repeatabilityLimit),
      count: of.count,
    };
    return { outputs, working, warnings: warningsOf(of) };
  },
});

function warningsOf({ count, standardDeviation }: { count: number; standardDeviation: number }): string[] {
  const warnings: string[] = [];
  if (count < 5) warnings.push(`${count} readings tell little of the scatter: take five or more.`);
  if (standardDeviation === 0)
    warnings.push("All readings are equal: the scatter is hidden by the instrument's resolution.");
  return warnings;
}
