import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { standardGravity as g } from "../quantity/unit-table/unit";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { longitudinalAxleLoads } from "./longitudinal";

const length = (label: string, help: string, max: number) =>
  quantity("length", { label, help, above: 0, max, unit: "mm" });
const input = z.object({
  mass: quantity("mass", { label: "Mass of the car", above: 0, max: 10_000, unit: "kg" }),
  wheelbase: length("Wheelbase", "Between the axles", 6),
  cgFromFront: length("Centre of gravity behind the front axle", "Wheelbase × rear share of the weight", 6),
  cgHeight: length("Height of the centre of gravity", "Above the ground", 1.5),
  acceleration: quantity("acceleration", {
    label: "Forward acceleration",
    help: "Negative when braking",
    min: -3 * g,
    max: 3 * g,
    unit: "g",
  }),
});

export const rollAxleLoadsComputation = defineComputation({
  name: "roll.axleLoads",
  title: "Axle loads when accelerating or braking",
  summary: "How acceleration or braking moves load between front and rear axle.",
  input,
  outputs: {
    front: { label: "Front axle load", dimension: "force", unit: "N", decimals: 0 },
    rear: { label: "Rear axle load", dimension: "force", unit: "N", decimals: 0 },
    transfer: { label: "Moved from front to rear", dimension: "force", unit: "N", decimals: 0 },
    frontShare: {
      how: ["λ_f", "F_f/(F_f + F_r)"],
      label: "Front share of the weight",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
  },
  source: [
    {
      title: "Statics of a rigid car on two axles (axle-load examples of an engineers' licence exam bank)",
      status: "read",
    },
  ],
  validity:
    "Steady acceleration on the level, both axles on the ground; no aerodynamic forces, wheel inertia or suspension anti effects.",
  example: {
    mass: "820 kg",
    wheelbase: "2300 mm",
    cgFromFront: "1205 mm",
    cgHeight: "440 mm",
    acceleration: "-0.8 g",
  },
  compute(given) {
    const { front, rear, transfer } = longitudinalAxleLoads(given);
    const frontShare = front / (front + rear);
    const working = () => [
      ...givenSteps(input, given, {
        symbols: { mass: "m", wheelbase: "l", cgFromFront: "c", cgHeight: "h", acceleration: "a" },
      }),
      ...worked([
        ["ΔF", "Moved from front to rear", "m·a·h/l", transfer, "force", "N"],
        ["F_f", "Front axle load", "m·g·(l − c)/l − ΔF", front, "force", "N"],
        ["F_r", "Rear axle load", "m·g·c/l + ΔF", rear, "force", "N"],
      ]),
    ];
    return { outputs: { front, rear, transfer, frontShare }, working, warnings: [] };
  },
});
