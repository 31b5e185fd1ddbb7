import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { assumedSteps, barFields, barOf, barSources, barSymbols, shapeWarnings } from "./field";
import { barDiameterForRate, barRate } from "./rate";

const input = z.object({
  ...barFields,
  wantedRate: quantity("rate", {
    label: "Wanted rate at the bar end, both ends moving oppositely",
    above: 0,
    unit: "N/mm",
  }),
});

const constant = "x: what bushes and links give per newton; it does not change with the bar.";

export const barDiameterComputation = defineComputation({
  name: "bar.diameter",
  title: "Anti-roll bar for a wanted rate",
  summary: "The diameter at which a bar of the present shape reaches a wanted rate.",
  input,
  outputs: {
    diameter: { label: "Outside diameter", dimension: "length", unit: "mm", decimals: 2 },
    bore: {
      how: ["b₂", "d₂ times bore over diameter of the present bar"],
      label: "Bore, in proportion",
      dimension: "length",
      unit: "mm",
      decimals: 2,
    },
    presentRate: { label: "Rate of the present bar", dimension: "rate", unit: "N/mm" },
  },
  source: barSources,
  validity:
    "As the bar's rate; shape, arms, links and bushes stay, and a tube keeps its ratio of bore to diameter.",
  example: {
    diameter: "16 mm",
    middleLength: "900 mm",
    leverLength: "200 mm",
    armLength: "215 mm",
    linkRate: "250 N/mm",
    wantedRate: "30 N/mm",
  },
  compute(given) {
    const { bar, flexibility, moduli } = barOf(given);
    const diameter = barDiameterForRate(given.wantedRate, bar, flexibility);
    const bore = ((given.bore ?? 0) * diameter) / given.diameter;
    const presentRate = barRate(bar, flexibility);
    const working = () => [
      ...givenSteps(input, given, { symbols: { ...barSymbols, wantedRate: "k₂" } }),
      ...assumedSteps(given, moduli),
      ...worked([
        ["k₁", "Rate of the present bar", "see bar.rate", presentRate, "rate", "N/mm"],
        ["d₂", "Diameter wanted", "d·[(1/k₁ − x)/(1/k₂ − x)]^¼", diameter, "length", "mm", constant],
      ]),
    ];
    return { outputs: { diameter, bore, presentRate }, working, warnings: shapeWarnings(given) };
  },
});
