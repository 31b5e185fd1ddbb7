import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { budgetOf } from "./budget";
import { conformityProbability } from "./conformity";
import { gaugeFields, kindFields, likeReading, readingList } from "./field";
import { type Reader, readerOf, readingStep } from "./reader";
import { gum, iso14253, jcgm106 } from "./source";
import { acceptanceZone, checkedLimits, type Limits, type Verdict, verdict } from "./verdict";

const input = z.object({
  ...kindFields,
  readings: readingList("Readings of the one thing"),
  lower: likeReading("Lower limit", "Itself allowed. One limit at least is needed."),
  upper: likeReading("Upper limit", "Itself allowed."),
  ...gaugeFields,
});

const words: Readonly<Record<Verdict, string>> = {
  inside: "inside",
  outside: "outside",
  cannotTell: "cannot tell",
};

export const verdictComputation = defineComputation({
  name: "measurement.verdict",
  title: "Inside or outside the limits",
  summary: "Whether readings prove a value inside or outside its limits, or prove neither.",
  input,
  outputs: {
    verdict: { how: ["verdict", "the rule above"], label: "Verdict", dimension: "text" },
    value: { label: "Mean of the readings", dimension: "asEntered" },
    expandedUncertainty: { label: "Expanded uncertainty, U", dimension: "asEntered" },
    acceptance: {
      how: ["A", "from L + U to H − U"],
      label: "Readings that would prove it inside",
      dimension: "text",
    },
    acceptanceLower: { how: ["A_L", "L + U"], label: "… from", dimension: "asEntered" },
    acceptanceUpper: { how: ["A_H", "H − U"], label: "… to", dimension: "asEntered" },
    probability: {
      how: ["P", "normal distribution about y with u, between the limits"],
      label: "Probability of lying within the limits",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
  },
  source: [iso14253, gum, jcgm106],
  validity:
    "Limits taken as included and as the whole truth; the uncertainty as known as the warnings say. Without any known uncertainty the verdict is “cannot tell”.",
  caution:
    "Proven inside its limits is not proven safe. The organiser's regulations and a competent mechanic decide.",
  example: {
    dimension: "angle",
    readings: ["0°12'", "0°14'", "0°11'", "0°13'", "0°12'", "0°13'"],
    accuracy: "2'",
    lower: "5'",
    upper: "15'",
  },
  compute(given) {
    const reader = readerOf(given, given.readings);
    const limit = (raw: number | string | undefined, place: string) =>
      raw === undefined ? undefined : reader.read(raw, place).si;
    const limits = checkedLimits({ lower: limit(given.lower, "lower"), upper: limit(given.upper, "upper") });
    const { value, known, working, warnings } = budgetOf(reader, given);
    const steps = () => [...limitSteps(reader, limits), ...working];
    if (known === undefined)
      return {
        outputs: {
          verdict: words.cannotTell,
          value: reader.value(value),
          expandedUncertainty: null,
          acceptance: null,
          acceptanceLower: null,
          acceptanceUpper: null,
          probability: null,
        },
        working: steps,
        warnings,
      };
    const { standard, expanded } = known;
    const outputs = {
      verdict: words[verdict({ value, expandedUncertainty: expanded, limits })],
      value: reader.value(value),
      expandedUncertainty: reader.differenceValue(expanded),
      ...acceptance(reader, acceptanceZone(limits, expanded)),
      probability:
        standard === 0 ? null : conformityProbability({ value, standardUncertainty: standard, limits }),
    };
    return { outputs, working: () => [...steps(), rule], warnings };
  },
});

const rule: WorkingStep = {
  symbol: "y",
  label: "Rule of ISO 14253-1, limits included",
  formula: "inside: L + U ≤ y ≤ H − U; outside: y < L − U or y > H + U",
  value: "neither: cannot tell",
};

function limitSteps(reader: Reader, { lower, upper }: Limits): WorkingStep[] {
  return [
    ...(lower === undefined ? [] : [readingStep(reader, ["L", "Lower limit", "given", lower], "value")]),
    ...(upper === undefined ? [] : [readingStep(reader, ["H", "Upper limit", "given", upper], "value")]),
  ];
}

type Zone = ReturnType<typeof acceptanceZone>;

function acceptance(reader: Reader, zone: Zone) {
  const end = (si: number | undefined) => (zone.empty || si === undefined ? null : reader.value(si));
  return {
    acceptance: acceptanceText(reader, zone),
    acceptanceLower: end(zone.lower),
    acceptanceUpper: end(zone.upper),
  };
}

function acceptanceText(reader: Reader, { lower, upper, empty }: Zone): string {
  if (empty) return "none: the uncertainty is wider than the zone";
  if (lower === undefined) return `up to ${reader.print(upper ?? Number.NaN)}`;
  return upper === undefined
    ? `from ${reader.print(lower)}`
    : `${reader.print(lower)} to ${reader.print(upper)}`;
}
