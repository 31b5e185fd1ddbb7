import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { resolveTyre, tyreSchema, tyreSources } from "./field";
import { travelPerEngineAngle } from "./gearing";

const input = z.object({
  before: tyreSchema,
  after: tyreSchema,
  overallRatio: quantity("ratio", {
    label: "Overall gear ratio",
    help: "Gear × final drive, e.g. top gear",
    above: 0,
    max: 100,
  }).optional(),
});
const per1000 = (label: string) =>
  ({ label, dimension: "lengthPerAngle", unit: "km/h per 1000 rev/min", decimals: 1 }) as const;

export const tyreChangeComputation = defineComputation({
  name: "tyre.change",
  title: "One tyre size against another",
  summary: "What another tyre size does to ride height, gearing and the speedometer's reading.",
  input,
  outputs: {
    diameterBefore: { label: "Overall diameter before", dimension: "length", unit: "mm", decimals: 1 },
    diameterAfter: { label: "Overall diameter after", dimension: "length", unit: "mm", decimals: 1 },
    heightChange: { label: "Change of ride height", dimension: "length", unit: "mm", decimals: 1 },
    circumferenceBefore: {
      label: "Rolling circumference before",
      dimension: "length",
      unit: "mm",
      decimals: 0,
    },
    circumferenceAfter: {
      label: "Rolling circumference after",
      dimension: "length",
      unit: "mm",
      decimals: 0,
    },
    circumferenceChange: {
      label: "Change of rolling circumference",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
    readingChange: {
      how: ["Δr", "circumference before over after, less 1"],
      label: "Change of the speedometer's reading at the same true speed",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
    speedBefore: per1000("Speed per 1000 rev/min before"),
    speedAfter: per1000("Speed per 1000 rev/min after"),
  },
  source: tyreSources,
  validity:
    "Tyres of the driven axle (speedometer, gearing) or of the axle looked at (ride height), both equally deflected under load; new tyres of nominal size.",
  caution:
    "Check clearance at full bump and lock, load index and speed symbol, and what insurer, road law and the event's regulations allow.",
  example: { before: { size: "155/80 R 13" }, after: { size: "175/70 R 13" }, overallRatio: 3.9 },
  compute(given) {
    const before = resolveTyre(given.before, { words: "Before", place: "before" });
    const after = resolveTyre(given.after, { words: "After", place: "after" });
    const heightChange =
      before.diameter === null || after.diameter === null ? null : (after.diameter - before.diameter) / 2;
    const circumferenceChange = after.circumference / before.circumference - 1;
    const readingChange = before.circumference / after.circumference - 1;
    const gearing = ({ circumference }: { circumference: number }): number | null =>
      given.overallRatio === undefined
        ? null
        : travelPerEngineAngle({ circumference, overallRatio: given.overallRatio });
    const [speedBefore, speedAfter] = [gearing(before), gearing(after)];
    const working = () => [
      ...before.steps(),
      ...after.steps(),
      ...givenSteps(input, given, { symbols: { overallRatio: "i" } }),
      ...worked([
        ["Δh", "Change of ride height", "(D₂ − D₁)/2", heightChange, "length", "mm"],
        ["ΔU", "Change of rolling circumference", "U₂/U₁ − 1", circumferenceChange, "ratio", "%"],
        ["Δv", "Change of the reading at the same true speed", "U₁/U₂ − 1", readingChange, "ratio", "%"],
        [
          "v₁",
          "Speed per 1000 rev/min before",
          "1000/min·U₁/i",
          speedBefore,
          "lengthPerAngle",
          "km/h per 1000 rev/min",
        ],
        [
          "v₂",
          "Speed per 1000 rev/min after",
          "1000/min·U₂/i",
          speedAfter,
          "lengthPerAngle",
          "km/h per 1000 rev/min",
        ],
      ]),
    ];
    const outputs = {
      diameterBefore: before.diameter,
      diameterAfter: after.diameter,
      heightChange,
      circumferenceBefore: before.circumference,
      circumferenceAfter: after.circumference,
      circumferenceChange,
      readingChange,
      speedBefore,
      speedAfter,
    };
    return { outputs, working, warnings: [...before.warnings, ...after.warnings] };
  },
});
