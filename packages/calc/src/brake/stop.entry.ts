import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { withDefault } from "./default";
import { brakeTests, regulationDistance } from "./regulation";
import { brakeCaution, r13, r13h, statics } from "./source";
import { meanFullyDevelopedDeceleration, stoppingDistance } from "./stop";

const speedField = (label: string) => quantity("speed", { label, above: 0, max: 120, unit: "km/h" });
const input = z.object({
  speed: speedField("Speed"),
  deceleration: quantity("acceleration", {
    label: "Deceleration once fully developed",
    above: 0,
    max: 20,
    unit: "g",
  }),
  buildUpTime: withDefault(
    quantity("time", {
      label: "Build-up time",
      help: "From first touch to full deceleration, usually 0.2 to 0.4 s",
      min: 0,
      max: 3,
    }),
    "0.3 s",
  ),
  reactionTime: withDefault(
    quantity("time", {
      label: "Reaction time",
      help: "0: from the first touch of the pedal, as in brake tests",
      min: 0,
      max: 5,
    }),
    "0 s",
  ),
});

export const stoppingDistanceComputation = defineComputation({
  name: "brake.stoppingDistance",
  title: "Stopping distance",
  summary: "Distance and time of a stop from a speed, beside what the type-approval tests allow.",
  input,
  outputs: {
    distance: { label: "Stopping distance", dimension: "length", unit: "m" },
    reactionDistance: { label: "Of that, before the brake is touched", dimension: "length", unit: "m" },
    time: { how: ["t", "t_r + t_b/2 + v/a"], label: "Time", dimension: "time", unit: "s" },
    r13h: { label: "UN R13-H allows, engine disconnected", dimension: "length", unit: "m" },
    r13: { label: "UN R13 allows, service brake", dimension: "length", unit: "m" },
  },
  source: [statics, r13, r13h],
  validity:
    "A level road, an even build-up, then a constant deceleration. The regulations' distances are for their own test conditions.",
  caution: brakeCaution,
  example: { speed: "100 km/h", deceleration: "0.8 g" },
  compute(given) {
    const { distance, reactionDistance, brakingDistance, time } = stoppingDistance(given);
    const r13Distance = regulationDistance(brakeTests.R13, given.speed);
    const r13hDistance = regulationDistance(brakeTests["R13-H"], given.speed);
    const working = () => [
      ...givenSteps(input, given, {
        symbols: { speed: "v", deceleration: "a", buildUpTime: "t_b", reactionTime: "t_r" },
      }),
      ...worked([
        ["s_r", "Before the brake is touched", "v·t_r", reactionDistance, "length", "m"],
        ["s_b", "Braking", "v²/(2a) + v·t_b/2 − a·t_b²/24", brakingDistance, "length", "m"],
        ["s", "Stopping distance", "s_r + s_b", distance, "length", "m"],
        ["s_H", "UN R13-H", "0.1·v + 0.0060·v², v in km/h", r13hDistance, "length", "m"],
        ["s_13", "UN R13", "0.1·v + v²/150, v in km/h", r13Distance, "length", "m"],
      ]),
    ];
    const warnings =
      distance - reactionDistance > r13hDistance ? ["Longer than UN R13-H allows a new car."] : [];
    return {
      outputs: { distance, reactionDistance, time, r13h: r13hDistance, r13: r13Distance },
      working,
      warnings,
    };
  },
});

const measured = z.object({
  fromSpeed: speedField("First speed").meta({ description: "UN R13: 0.8 of the speed at the start" }),
  toSpeed: quantity("speed", {
    label: "Second speed",
    help: "UN R13: 0.1 of the speed at the start",
    min: 0,
    max: 120,
    unit: "km/h",
  }),
  distance: quantity("length", { label: "Distance between the two", above: 0, max: 1000, unit: "m" }),
});

export const measuredDecelerationComputation = defineComputation({
  name: "brake.measuredDeceleration",
  title: "Deceleration from a road test",
  summary: "Mean fully developed deceleration between two speeds of one stop.",
  input: measured,
  outputs: {
    deceleration: { label: "Mean fully developed deceleration", dimension: "acceleration", unit: "m/s²" },
    inG: {
      how: ["a/g", "deceleration over standard gravity"],
      label: "… in g",
      dimension: "acceleration",
      unit: "g",
    },
  },
  source: [r13],
  validity: "One stop on a level, dry, straight road, both speeds read from the same record.",
  caution: brakeCaution,
  example: { fromSpeed: "64 km/h", toSpeed: "8 km/h", distance: "26.815 m" },
  compute(given) {
    const { fromSpeed, toSpeed, distance } = given;
    const deceleration = meanFullyDevelopedDeceleration(fromSpeed, toSpeed, distance);
    const working = () => [
      ...givenSteps(measured, given, { symbols: { fromSpeed: "v_b", toSpeed: "v_e", distance: "s" } }),
      ...worked([["d_m", "Mean deceleration", "(v_b² − v_e²)/(2·s)", deceleration, "acceleration", "m/s²"]]),
    ];
    return { outputs: { deceleration, inG: deceleration }, working, warnings: [] };
  },
});
