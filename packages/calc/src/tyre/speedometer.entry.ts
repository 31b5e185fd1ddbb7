import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { resolveTyre, tyreSchema, tyreSources } from "./field";
import { allowedFactors, judgeReading, readingFactorAfter, speedometerTestSpeeds } from "./speedometer";

const speed = (label: string, help: string) =>
  quantity("speed", { label, help, above: 0, max: 150, unit: "km/h" });
const input = z.object({
  before: tyreSchema,
  after: tyreSchema,
  indicated: speed("Speed shown", "Where the true speed is wanted"),
  shownBefore: speed(
    "Checked on the old tyres: speed shown",
    "With the true speed beside it; without them the speedometer's own error is not known",
  ).optional(),
  trueBefore: speed("Checked on the old tyres: true speed", "By satellite or stop-watch").optional(),
  topSpeed: quantity("speed", {
    label: "Top speed of the car",
    help: "Decides the test speeds; left out, above 150 km/h",
    min: 7,
    max: 150,
    unit: "km/h",
  }).optional(),
});
type Input = z.output<typeof input>;

/** Left out, the car is taken to be faster than this, m/s: tested at 40, 80 and 120 km/h. */
const fastCar = 151 / 3.6;

export const tyreSpeedometerComputation = defineComputation({
  name: "tyre.speedometer",
  title: "Speedometer after a tyre change",
  summary: "True speed behind a reading on other tyres, and whether the speedometer still meets UN R39.",
  input,
  outputs: {
    trueSpeed: { label: "True speed at the speed shown", dimension: "speed", unit: "km/h", decimals: 2 },
    readingChange: {
      how: ["Δr", "r₂/r₁ − 1"],
      label: "Change of the reading at the same true speed",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
    overReading: {
      how: ["e", "r₂ − 1"],
      label: "Reads high by, on the new tyres",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
    leastBefore: {
      how: ["e_min", "that the new tyres may not read low: r₁ at r₂ = 1, less 1"],
      label: "Least it must have read high on the old tyres",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
    mostBefore: {
      how: ["e_max", "that the new tyres stay within r_max: r₁ at r₂ = r_max, less 1"],
      label: "Most it may have read high on the old tyres",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
    verdictBefore: {
      how: ["before", "0 ≤ V1 − V2 ≤ V2/10 + 4 km/h at every speed tested, by r₁"],
      label: "UN R39 on the old tyres",
      dimension: "text",
    },
    verdict: {
      how: ["after", "0 ≤ V1 − V2 ≤ V2/10 + 4 km/h at every speed tested, by r₂"],
      label: "UN R39 on the new tyres",
      dimension: "text",
    },
  },
  source: [
    { title: "UN Regulation 39", locus: "5.3, 0 ≤ V1 − V2 ≤ V2/10 + 4 km/h", status: "read-formula" },
    { title: "UN Regulation 39", locus: "5.2.5, test speeds", status: "memory" },
    {
      title: "Australian vehicle standards circular 18/03-3-1",
      locus: "the test speed is the one shown",
      status: "read",
    },
    ...tyreSources,
  ],
  validity:
    "A speedometer driven by the wheels that changed, proportional to their turns. Limits are inclusive; uncertainty of the check is not counted.",
  caution:
    "UN R39 is a type-approval rule: which limits bind an old car on the road, local law decides. A speedometer must never read low.",
  example: {
    before: { size: "155/80 R 13" },
    after: { size: "175/70 R 13" },
    indicated: "100 km/h",
    shownBefore: "100 km/h",
    trueBefore: "95 km/h",
    topSpeed: "170 km/h",
  },
  compute(given) {
    const before = resolveTyre(given.before, { words: "Before", place: "before" });
    const after = resolveTyre(given.after, { words: "After", place: "after" });
    const circumferences = { before: before.circumference, after: after.circumference };
    const known = factorBefore(given);
    const factor = readingFactorAfter(known ?? 1, circumferences);
    const trueSpeed = given.indicated / factor;
    const shown = speedometerTestSpeeds(given.topSpeed ?? fastCar);
    const allowed = allowedFactors(shown);
    const ratio = circumferences.after / circumferences.before;
    const outputs = {
      trueSpeed,
      readingChange: 1 / ratio - 1,
      overReading: known === null ? null : factor - 1,
      leastBefore: allowed.least * ratio - 1,
      mostBefore: allowed.greatest * ratio - 1,
      verdictBefore: known === null ? cannotTell : verdictOf(shown, known),
      verdict: known === null ? cannotTell : verdictOf(shown, factor),
    };
    const working = () => [
      ...before.steps(),
      ...after.steps(),
      ...givenSteps(input, given, {
        symbols: { indicated: "V1", shownBefore: "V1₁", trueBefore: "V2₁", topSpeed: "V_max" },
      }),
      ...assumedSteps(given),
      ...worked([
        ["r₁", "Reading over true speed, old tyres", "V1₁/V2₁", known ?? 1, "ratio"],
        ["r₂", "Reading over true speed, new tyres", "r₁·U₁/U₂", factor, "ratio"],
        ["V2", "True speed", "V1/r₂", trueSpeed, "speed", "km/h"],
        ...shown.map(
          (one, index) =>
            [`V1_${index + 1}`, "Tested at a speed shown of", "UN R39 5.2.5", one, "speed", "km/h"] as const,
        ),
        [
          "r_max",
          "Most that reading over true speed may be",
          "min 1.1·V1/(V1 − 4 km/h)",
          allowed.greatest,
          "ratio",
        ],
      ]),
    ];
    const guessed =
      known === null
        ? ["True speed is worked out as if the speedometer had been exact on the old tyres."]
        : [];
    return { outputs, working, warnings: [...before.warnings, ...after.warnings, ...guessed] };
  },
});

const cannotTell = "cannot tell: the speedometer's own error is not known";
const verdicts = {
  within: "within UN R39",
  low: "reads low: never allowed",
  high: "reads higher than UN R39 allows",
} as const;

function verdictOf(shown: readonly number[], factor: number): string {
  const verdict =
    shown.map((one) => judgeReading(one, one / factor)).find((one) => one !== "within") ?? "within";
  return verdicts[verdict];
}

/** Reading over true speed on the old tyres, or `null` when it was not checked. */
function factorBefore({ shownBefore, trueBefore }: Input): number | null {
  if (shownBefore === undefined && trueBefore === undefined) return null;
  if (shownBefore !== undefined && trueBefore !== undefined) return shownBefore / trueBefore;
  throw new CalcRefusal(
    "HALF_A_CHECK",
    "a check on the old tyres needs both the speed shown and the true speed",
    "shownBefore",
  );
}

function assumedSteps({ shownBefore, topSpeed }: Input): WorkingStep[] {
  const steps: WorkingStep[] = [];
  if (shownBefore === undefined)
    steps.push({
      symbol: "r₁",
      label: "Check on the old tyres",
      value: "not given: taken as exact for the true speed, unknown for the verdict",
    });
  if (topSpeed === undefined)
    steps.push({ symbol: "V_max", label: "Top speed", value: "not given: taken as above 150 km/h" });
  return steps;
}
