import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { ratesInParallel, ratesInSeries } from "./combine";
import { springRateField } from "./field";
import { worked } from "./worked";

/** More springs than this on one corner is a slip of the pen. */
const mostSprings = 10;

export const springCombinationComputation = defineComputation({
  name: "spring.combination",
  title: "Springs together",
  summary: "Rate of several springs one on top of the other, or side by side.",
  input: z.object({
    rates: z.array(springRateField).min(1).max(mostSprings).meta({ title: "Spring rates" }),
    arrangement: z.enum(["series", "parallel"]).meta({
      title: "Arrangement",
      description: "series: one on top of the other; parallel: side by side or one inside the other",
    }),
  }),
  outputs: { rate: { label: "Rate together", dimension: "rate", unit: "N/mm" } },
  source: [
    {
      title: "Statics: springs in series add their movements, in parallel their forces",
      status: "common practice, no source",
    },
  ],
  validity:
    "Linear springs, none of them coil-bound and none slack. A tender spring that closes solid leaves the main spring alone.",
  example: { rates: ["28.125 N/mm", "180 N/mm"], arrangement: "series" },
  compute({ rates, arrangement }) {
    const inSeries = arrangement === "series";
    const rate = inSeries ? ratesInSeries(rates) : ratesInParallel(rates);
    const working = () => [
      ...worked(
        rates.map((one, index) => [`k${index + 1}`, `Spring ${index + 1}`, "given", one, "rate", "N/mm"]),
      ),
      ...worked([["k", "Rate together", inSeries ? "1/Σ(1/k)" : "Σk", rate, "rate", "N/mm"]]),
    ];
    return { outputs: { rate }, working, warnings: [] };
  },
});
