import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { coverageFactor } from "../measurement/uncertainty";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { centreInPlan, cgHeight, cgHeightUncertainty, type RaisedAxle, shortcutAboveHubs } from "./centre";
import { cornerSums } from "./corner";
import { cornerFields, cornerSymbols, sumSteps, trackFields, wheelbaseField } from "./field";
import { cornerArticle, gumCombination, liftCaution, raisedAxle } from "./source";

const radius = (label: string) =>
  quantity("length", {
    label,
    help: "Hub above what the tyre stands on",
    above: 0,
    max: 0.6,
    unit: "mm",
  }).optional();
const standardUncertainty = (label: string, dimension: "mass" | "length", unit: string) =>
  quantity(dimension, {
    label,
    help: "Standard uncertainty; left out, none is counted",
    min: 0,
    unit,
  }).optional();

const input = z.object({
  ...cornerFields,
  wheelbase: wheelbaseField,
  ...trackFields,
  raised: z.enum(["front", "rear"]).meta({ title: "Axle that was raised" }).optional(),
  lift: quantity("length", { label: "Height of the blocks", above: 0, max: 3, unit: "mm" }).optional(),
  lowMass: quantity("mass", {
    label: "On the axle that stayed down",
    help: "Both its scales together, with the other axle raised",
    above: 0,
    max: 5000,
  }).optional(),
  frontRadius: radius("Loaded radius of the front wheels"),
  rearRadius: radius("Loaded radius of the rear wheels"),
  gainUncertainty: standardUncertainty("Uncertainty of the change of weight", "mass", "kg"),
  liftUncertainty: standardUncertainty("Uncertainty of the blocks' height", "length", "mm"),
  wheelbaseUncertainty: standardUncertainty("Uncertainty of the wheelbase", "length", "mm"),
  radiusUncertainty: standardUncertainty("Uncertainty of the radii", "length", "mm"),
});
type Input = z.output<typeof input>;

export const centreOfGravityComputation = defineComputation({
  name: "weight.centreOfGravity",
  title: "Centre of gravity",
  summary:
    "Where the centre of gravity lies: from the corner weights in the plan, and in height from a raised axle.",
  input,
  outputs: {
    behindFront: { label: "Behind the front axle", dimension: "length", unit: "mm", decimals: 0 },
    left: {
      label: "Left of the centre plane (negative: right)",
      dimension: "length",
      unit: "mm",
      decimals: 1,
    },
    height: { label: "Above the ground", dimension: "length", unit: "mm", decimals: 0 },
    heightUncertainty: {
      label: "Expanded uncertainty of that, k = 2",
      dimension: "length",
      unit: "mm",
      decimals: 0,
    },
    aboveHubs: { label: "Above the line of the hubs", dimension: "length", unit: "mm", decimals: 0 },
    tilt: { label: "Tilt", dimension: "angle", unit: "°" },
  },
  source: [cornerArticle, raisedAxle, gumCombination],
  validity:
    "Each track even about the centre plane. Height: suspension locked, tyres hard, brakes off, wheels free to roll, tanks full or empty; the rigid car is tilted exactly, wheel radii included.",
  caution: liftCaution,
  example: {
    leftFront: "216 kg",
    rightFront: "214 kg",
    leftRear: "237 kg",
    rightRear: "233 kg",
    wheelbase: "2400 mm",
    frontTrack: "1250 mm",
    rearTrack: "1260 mm",
    raised: "rear",
    lift: "500 mm",
    lowMass: "450 kg",
    frontRadius: "290 mm",
    rearRadius: "290 mm",
    gainUncertainty: "1 kg",
    liftUncertainty: "2 mm",
  },
  compute(given) {
    const { behindFront, left } = centreInPlan(given, given);
    const weighing = weighingOf(given);
    const found = weighing === undefined ? undefined : cgHeight(weighing);
    const spread = weighing === undefined ? null : spreadOf(weighing, given);
    const shortcut =
      weighing === undefined || found === undefined ? null : shortcutAboveHubs(weighing, found.gain);
    const working = () => [
      ...givenSteps(input, given, { symbols: { ...cornerSymbols, ...symbols } }),
      ...sumSteps(given),
      ...worked([
        ["b_f", "Behind the front axle", "L·m_r/m", behindFront, "length", "mm"],
        ["y", "Left of the centre plane", "[(LF − RF)·t_f + (LR − RR)·t_r]/(2·m)", left, "length", "mm"],
        ["Δm", "Gain of the lower axle", "m_low − level", found?.gain ?? null, "mass", "kg"],
        ["θ", "Tilt", "asin((r_r − r_f ± H)/L_h) − asin((r_r − r_f)/L_h)", found?.tilt ?? null, "angle", "°"],
        [
          "c",
          "Above the line of the hubs",
          "(x₀·cos θ₁ − x₁·cos θ₀)/sin(θ₁ − θ₀)",
          found?.aboveHubs ?? null,
          "length",
          "mm",
        ],
        ["h", "Above the ground", "r_f + a·sin θ₀ + c·cos θ₀", found?.height ?? null, "length", "mm", exact],
        [
          "c′",
          "The shortcut others use for c",
          "L²·Δm/(m·H)",
          shortcut,
          "length",
          "mm",
          "Too high by a few per cent; not used.",
        ],
        ["U", "Expanded uncertainty of h", "2·√Σ(∂h/∂x·u)²", spread, "length", "mm"],
      ]),
    ];
    const outputs = {
      behindFront,
      left,
      height: found?.height ?? null,
      heightUncertainty: spread,
      aboveHubs: found?.aboveHubs ?? null,
      tilt: found?.tilt ?? null,
    };
    return { outputs, working, warnings: warningsOf(given, found, spread) };
  },
});

const exact = "Convention: the car is rigid and tilted exactly, wheel radii included.";
const symbols = {
  gainUncertainty: "u_Δm",
  liftUncertainty: "u_H",
  wheelbaseUncertainty: "u_L",
  radiusUncertainty: "u_r",
  wheelbase: "L",
  frontTrack: "t_f",
  rearTrack: "t_r",
  lift: "H",
  lowMass: "m_low",
  frontRadius: "r_f",
  rearRadius: "r_r",
};
const raisedKeys = ["raised", "lift", "lowMass", "frontRadius", "rearRadius"] as const;

/** The weighing with an axle raised, or `undefined` where none was made; half of one is refused. */
function weighingOf(given: Input): RaisedAxle | undefined {
  const { raised, lift, lowMass, frontRadius, rearRadius, wheelbase } = given;
  const missing = raisedKeys.filter((key) => given[key] === undefined);
  if (missing.length === raisedKeys.length) return undefined;
  if (
    raised === undefined ||
    lift === undefined ||
    lowMass === undefined ||
    frontRadius === undefined ||
    rearRadius === undefined
  )
    throw new CalcRefusal(
      "NOT_GIVEN",
      `the height needs all of ${raisedKeys.join(", ")}; ${missing.join(", ")} not given`,
      missing[0],
    );
  const { front, rear } = cornerSums(given);
  return { frontMass: front, rearMass: rear, wheelbase, raised, lift, lowMass, frontRadius, rearRadius };
}

/** Expanded; `null` where no uncertainty was given at all: not known is not nought. */
function spreadOf(weighing: RaisedAxle, given: Input): number | null {
  const {
    gainUncertainty: gain,
    liftUncertainty: lift,
    wheelbaseUncertainty: wheelbase,
    radiusUncertainty: radius,
  } = given;
  if ([gain, lift, wheelbase, radius].every((each) => each === undefined)) return null;
  return coverageFactor * cgHeightUncertainty(weighing, { gain, lift, wheelbase, radius });
}

/** Below this tilt a kilogram more or less moves the answer by inches, rad. */
const leastTilt = (8 * Math.PI) / 180;

function warningsOf(
  given: Input,
  found: ReturnType<typeof cgHeight> | undefined,
  spread: number | null,
): string[] {
  if (found === undefined) return [];
  const warnings: string[] = [];
  if (found.tilt < leastTilt)
    warnings.push("Tilted by less than 8°: raise the axle more, the height is hardly determined.");
  if (found.aboveHubs < 0)
    warnings.push("Below the hubs: hardly true of a car. Check which axle was raised, and the scales.");
  if (spread === null)
    warnings.push(
      "No uncertainty was given: one kilogram on the change of weight is worth some centimetres of height.",
    );
  else if (given.gainUncertainty === undefined)
    warnings.push("The uncertainty of the change of weight was not given, and it is the one that matters.");
  return warnings;
}
