import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { kindFields, readingList } from "./field";
import { type Reader, readerOf, readingStep } from "./reader";
import { outlierThreshold, type RobustSummary, robustSummary } from "./robust";
import { nistOutliers } from "./source";

const input = z.object({
  ...kindFields,
  readings: readingList("Values to compare"),
  threshold: quantity("ratio", {
    label: "Score beyond which a value stands apart",
    help: "3.5 is usual",
    above: 0,
    max: 100,
  }).prefault(outlierThreshold),
});

export const outlierComputation = defineComputation({
  name: "measurement.outlier",
  title: "Values that stand apart",
  summary:
    "Values far from the rest, judged by median and median absolute deviation, which a few wild ones do not move.",
  input,
  outputs: {
    median: { label: "Median", dimension: "asEntered" },
    scale: { label: "Robust standard deviation", dimension: "asEntered" },
    outlierCount: {
      how: ["n_out", "values whose score is beyond the z above"],
      label: "Values that stand apart",
      dimension: "count",
      decimals: 0,
    },
    outliers: { how: ["outliers", "the same, each with its own score"], label: "Which", dimension: "text" },
  },
  source: [nistOutliers],
  validity:
    "Five values or more that are about normally scattered but for a few. A value that stands apart is one to look at, not one to delete.",
  example: {
    dimension: "angle",
    readings: ["-1°", "-1°15'", "-0°45'", "-1°5'", "-1°10'", "-3°30'", "-0°55'"],
  },
  compute(given) {
    const reader = readerOf(given, given.readings);
    const values = given.readings.map((raw, index) => reader.read(raw, `readings.${index}`).si);
    const summary = robustSummary(values, given.threshold);
    const working = () => [
      readingStep(reader, ["m", "Median", "middle of the ordered values", summary.median], "value"),
      readingStep(reader, ["MAD", "Median absolute deviation", "median of |x − m|", summary.mad]),
      readingStep(reader, ["s", "Robust standard deviation", scaleFormula[summary.scaleFrom], summary.scale]),
      {
        symbol: "z",
        label: "Score",
        formula: "|x − m|/s",
        value: given.threshold,
        note: "stands apart beyond this",
      },
    ];
    const outputs = {
      median: reader.value(summary.median),
      scale: reader.differenceValue(summary.scale),
      outlierCount: summary.outliers.length,
      outliers: outlierText(reader, values, summary),
    };
    return { outputs, working, warnings: warningsOf(summary) };
  },
});

const scaleFormula: Readonly<Record<RobustSummary["scaleFrom"], string>> = {
  mad: "MAD/0.6745",
  meanDeviation: "√(π/2)·mean of |x − m|",
  none: "all values are equal",
};

function outlierText(reader: Reader, values: readonly number[], { outliers, scores }: RobustSummary): string {
  if (outliers.length === 0) return "none";
  const texts = outliers.map((index) => {
    const score = Math.abs(scores[index] ?? 0).toFixed(1);
    return `number ${index + 1}: ${reader.print(values[index] ?? Number.NaN)} (score ${score})`;
  });
  return texts.join("; ");
}

function warningsOf({ scores, scaleFrom }: RobustSummary): string[] {
  const warnings: string[] = [];
  if (scores.length < 5) warnings.push(`${scores.length} values are too few to tell which stands apart.`);
  if (scaleFrom === "meanDeviation")
    warnings.push(
      "More than half of the values are equal, so the mean deviation takes the place of the MAD.",
    );
  return warnings;
}
