import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { CalcRefusal } from "../catalogue/refusal";
import { budgetOf } from "./budget";
import { gaugeFields, kindFields, readingList } from "./field";
import { readerOf } from "./reader";
import { gum } from "./source";

const input = z.object({ ...kindFields, readings: readingList("Readings of the one thing"), ...gaugeFields });

export const uncertaintyComputation = defineComputation({
  name: "measurement.uncertainty",
  title: "Uncertainty of a measurement",
  summary: "Mean and expanded uncertainty of one or more readings, from resolution, instrument and scatter.",
  input,
  outputs: {
    result: {
      how: ["y ± U", "mean and expanded uncertainty, in the unit it was read in"],
      label: "Result",
      dimension: "text",
    },
    value: { label: "Mean of the readings", dimension: "asEntered" },
    standardUncertainty: { label: "Combined standard uncertainty, u", dimension: "asEntered" },
    expandedUncertainty: { label: "Expanded uncertainty, U", dimension: "asEntered" },
    largest: {
      how: ["largest", "greatest of the contributions above"],
      label: "Largest contribution",
      dimension: "text",
    },
  },
  source: [gum],
  validity:
    "Contributions that do not depend on one another; a result that is the mean of its readings. A systematic fault (a floor out of level, a bent wheel) is in none of them.",
  example: {
    dimension: "angle",
    readings: ["0°12'", "0°14'", "0°11'", "0°13'", "0°12'", "0°13'"],
    accuracy: "2'",
  },
  compute(given) {
    const reader = readerOf(given, given.readings);
    const { value, known, working, warnings } = budgetOf(reader, given);
    if (known === undefined) throw new CalcRefusal("NO_CONTRIBUTION", warnings.join(" "), "resolution");
    return {
      outputs: {
        result: `${reader.print(value)} ± ${reader.printDifference(known.expanded)} (k = 2)`,
        value: reader.value(value),
        standardUncertainty: reader.differenceValue(known.standard),
        expandedUncertainty: reader.differenceValue(known.expanded),
        largest: known.largest,
      },
      working: () => working,
      warnings,
    };
  },
});
