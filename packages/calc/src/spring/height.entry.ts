import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { standardGravity } from "../quantity/unit-table/unit";
import { motionRatioField, ratioWarnings, springRateField, sprungMassField } from "./field";
import { givenSteps } from "./given";
import { loadedLength, rideHeightChange, seatLiftForHeight, springForceOfWheelLoad } from "./height";
import { worked } from "./worked";

const spring = z.strictObject({
  rate: springRateField,
  freeLength: quantity("length", { label: "Free length", above: 0, max: 2, unit: "mm" }),
  solidLength: quantity("length", {
    label: "Solid (coil-bound) length",
    above: 0,
    max: 2,
    unit: "mm",
  }).optional(),
});
const input = z.object({
  before: spring,
  after: spring,
  sprungMass: sprungMassField,
  motionRatio: motionRatioField,
  seatLift: quantity("length", {
    label: "Spring seat screwed up",
    help: "Against the spring; negative when screwed down",
    min: -0.3,
    max: 0.3,
    unit: "mm",
  }).optional(),
  droopLength: quantity("length", {
    label: "Length between the spring's seats at full droop, after",
    help: "With the damper fully extended and the seat where it ends up; gives preload and droop travel",
    above: 0,
    max: 2,
    unit: "mm",
  }).optional(),
});
const symbols = (index: string) => ({
  rate: `k${index}`,
  freeLength: `L_0${index}`,
  solidLength: `L_s${index}`,
});

export const springHeightComputation = defineComputation({
  name: "spring.rideHeight",
  title: "Ride height and preload after a spring change",
  summary:
    "How far a corner rises or sinks on another spring or another seat height, and what travel and preload are left.",
  input,
  outputs: {
    heightChange: { label: "Change of ride height", dimension: "length", unit: "mm", decimals: 1 },
    seatLiftToRestore: {
      label: "Seat lift that keeps the old height",
      dimension: "length",
      unit: "mm",
      decimals: 1,
    },
    force: { label: "Force in the spring at rest", dimension: "force", unit: "N" },
    lengthBefore: { label: "Loaded length before", dimension: "length", unit: "mm", decimals: 1 },
    lengthAfter: { label: "Loaded length after", dimension: "length", unit: "mm", decimals: 1 },
    bumpTravel: { label: "Wheel travel to coil-bind", dimension: "length", unit: "mm", decimals: 1 },
    preload: { label: "Preload at full droop", dimension: "force", unit: "N" },
    droopTravel: { label: "Wheel travel to full droop", dimension: "length", unit: "mm", decimals: 1 },
  },
  source: [{ title: "Virtual work and Hooke's law", status: "common practice, no source" }],
  validity:
    "One corner with its load unchanged, constant motion ratio, linear springs, rigid tyre. Corner weights shift between wheels when one corner is raised.",
  caution:
    "A spring that is loose in its seats at full droop can fall out of place. Check that travel, not the spring, stops the suspension.",
  example: {
    before: { rate: "28 N/mm", freeLength: "310 mm" },
    after: { rate: "35 N/mm", freeLength: "290 mm", solidLength: "140 mm" },
    sprungMass: "185 kg",
    motionRatio: 0.72,
    droopLength: "265 mm",
  },
  compute(given) {
    const { before, after, motionRatio, seatLift, droopLength } = given;
    const force = springForceOfWheelLoad(given.sprungMass * standardGravity, motionRatio);
    const [lengthBefore, lengthAfter] = [loadedLength(before, force), loadedLength(after, force)];
    const heightChange = rideHeightChange({ before, after, force, motionRatio, seatLift });
    const seatLiftToRestore = seatLiftForHeight(0, { before, after, force, motionRatio });
    const bumpTravel =
      after.solidLength === undefined ? null : (lengthAfter - after.solidLength) / motionRatio;
    const preload =
      droopLength === undefined ? null : after.rate * Math.max(0, after.freeLength - droopLength);
    const droopTravel =
      droopLength === undefined ? null : Math.max(0, droopLength - lengthAfter) / motionRatio;
    const working = () => [
      ...givenSteps(spring, before, { symbols: symbols("₁"), prefix: "Before: " }),
      ...givenSteps(spring, after, { symbols: symbols("₂"), prefix: "After: " }),
      ...givenSteps(input, given, {
        symbols: { sprungMass: "m", motionRatio: "MR", seatLift: "s", droopLength: "L_d" },
      }),
      ...worked([
        ["F", "Force in the spring at rest", "m·g/MR", force, "force", "N"],
        ["L₁", "Loaded length before", "L_0₁ − F/k₁", lengthBefore, "length", "mm"],
        ["L₂", "Loaded length after", "L_0₂ − F/k₂", lengthAfter, "length", "mm"],
        ["Δh", "Change of ride height", "(L₂ − L₁ + s)/MR", heightChange, "length", "mm"],
        ["s₀", "Seat lift that keeps the old height", "L₁ − L₂", seatLiftToRestore, "length", "mm"],
        ["z_b", "Wheel travel to coil-bind", "(L₂ − L_s₂)/MR", bumpTravel, "length", "mm"],
        ["F_0", "Preload at full droop", "k₂·(L_0₂ − L_d)", preload, "force", "N"],
        ["z_d", "Wheel travel to full droop", "(L_d − L₂)/MR", droopTravel, "length", "mm"],
      ]),
    ];
    const outputs = {
      heightChange,
      seatLiftToRestore,
      force,
      lengthBefore,
      lengthAfter,
      bumpTravel,
      preload,
      droopTravel,
    };
    return {
      outputs,
      working,
      warnings: [...ratioWarnings(motionRatio), ...droopWarnings({ droopLength, preload, droopTravel })],
    };
  },
});

interface Droop {
  readonly droopLength: number | undefined;
  readonly preload: number | null;
  readonly droopTravel: number | null;
}

function droopWarnings({ droopLength, preload, droopTravel }: Droop): string[] {
  if (droopLength === undefined) return [];
  const warnings: string[] = [];
  if (preload === 0) warnings.push("The spring is loose in its seats at full droop.");
  if (droopTravel === 0)
    warnings.push(
      "Preload carries the car: it rests on the damper's extension stop, and the ride height shown is not reached.",
    );
  return warnings;
}
