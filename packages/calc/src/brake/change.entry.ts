import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { standardGravity } from "../quantity/unit-table/unit";
import { givenSteps } from "../spring/given";
import { pistonsArea, systemOf } from "./assemble";
import {
  type AxleInput,
  carFields,
  carSymbols,
  type SystemInput,
  systemSchema,
  systemSymbols,
} from "./field";
import { pistonArea } from "./hydraulic";
import { type StopOnRoad, stopOnRoad } from "./report";
import { brakeCaution, limpert, r13h, statics } from "./source";
import { axleSteps, firstAxleText, roadFields, stopSteps, stopWarnings } from "./system.entry";

const input = z.object({
  ...carFields,
  ...roadFields,
  before: systemSchema.meta({ title: "Before" }),
  after: systemSchema.meta({ title: "After" }),
});

const example = {
  pedalRatio: 5,
  masterBore: "0.7 in",
  front: {
    kind: "disc",
    pistonDiameters: ["48 mm"],
    friction: 0.38,
    discDiameter: "9 1/2 in",
    padHeight: "45 mm",
    tyreRadius: "290 mm",
  },
  rear: {
    kind: "drum",
    pistonDiameters: ["5/8 in"],
    brakeFactor: 2.1,
    drumDiameter: "8 in",
    thresholdPressure: "4 bar",
    tyreRadius: "290 mm",
  },
} as const;

export const brakeChangeComputation = defineComputation({
  name: "brake.change",
  title: "Brakes before and after a change",
  summary:
    "What other pistons, discs, pads, tyres, a servo or a rear valve do to pedal, balance and stopping distance.",
  input,
  outputs: {
    decelerationRatio: {
      how: ["z₂/z₁", "deceleration reached, after over before"],
      label: "Deceleration at the same pedal, after over before",
      dimension: "ratio",
    },
    decelerationBefore: { label: "Deceleration before", dimension: "acceleration", unit: "g" },
    decelerationAfter: { label: "Deceleration after", dimension: "acceleration", unit: "g" },
    firstAxleBefore: {
      how: ["first₁", "the axle that first reaches k times its load"],
      label: "Locks first, before",
      dimension: "text",
    },
    firstAxleAfter: { how: ["first₂", "as above"], label: "Locks first, after", dimension: "text" },
    lockDecelerationBefore: {
      label: "Deceleration at first lock, before",
      dimension: "acceleration",
      unit: "g",
    },
    lockDecelerationAfter: {
      label: "Deceleration at first lock, after",
      dimension: "acceleration",
      unit: "g",
    },
    lockPedalForceBefore: {
      how: ["F_l₁", "pedal force at which it does"],
      label: "Pedal force at first lock, before",
      dimension: "force",
      unit: "N",
    },
    lockPedalForceAfter: {
      how: ["F_l₂", "as above"],
      label: "Pedal force at first lock, after",
      dimension: "force",
      unit: "N",
    },
    frontShareBefore: {
      how: ["β₁", "front over both axles' brake force"],
      label: "Front share, before",
      dimension: "ratio",
      unit: "%",
    },
    frontShareAfter: { how: ["β₂", "as above"], label: "Front share, after", dimension: "ratio", unit: "%" },
    pedalTravelRatio: {
      how: ["s₂/s₁", "pedal ratio times piston area over master cylinder area, after over before"],
      label: "Pedal travel, after over before",
      dimension: "ratio",
    },
    distanceBefore: {
      how: ["s₁", "as brake.stoppingDistance, from v at the deceleration reached"],
      label: "Braking distance, before",
      dimension: "length",
      unit: "m",
    },
    distanceAfter: {
      how: ["s₂", "as above"],
      label: "Braking distance, after",
      dimension: "length",
      unit: "m",
    },
  },
  source: [statics, limpert, r13h],
  validity:
    "As the whole system's; pedal travel for the same movement of pads and shoes, and only with one master cylinder.",
  caution: brakeCaution,
  example: {
    frontMass: "470 kg",
    rearMass: "510 kg",
    wheelbase: "2300 mm",
    cgHeight: "460 mm",
    pedalForce: "180 N",
    adhesion: 0.9,
    before: {
      ...example,
      front: { ...example.front, pistonDiameters: [...example.front.pistonDiameters] },
      rear: { ...example.rear, pistonDiameters: [...example.rear.pistonDiameters] },
    },
    after: {
      ...example,
      front: { ...example.front, pistonDiameters: ["54 mm"], discDiameter: "10 1/2 in" },
      rear: { ...example.rear, pistonDiameters: [...example.rear.pistonDiameters] },
    },
  },
  compute(given) {
    const before = stopOnRoad(systemOf(given.before, "before."), given, given);
    const after = stopOnRoad(systemOf(given.after, "after."), given, given);
    const travel = travelRatio(given.before, given.after);
    const working = () => [
      ...givenSteps(input, given, {
        symbols: { ...carSymbols, pedalForce: "F_p", adhesion: "k", speed: "v" },
      }),
      ...systemSteps("Before: ", given.before, before),
      ...systemSteps("After: ", given.after, after),
    ];
    const [was, is] = [answers(before), answers(after)];
    const outputs = {
      decelerationRatio: before.deceleration > 0 ? after.deceleration / before.deceleration : null,
      decelerationBefore: was.deceleration,
      decelerationAfter: is.deceleration,
      firstAxleBefore: was.firstAxle,
      firstAxleAfter: is.firstAxle,
      lockDecelerationBefore: was.lockDeceleration,
      lockDecelerationAfter: is.lockDeceleration,
      lockPedalForceBefore: was.lockPedalForce,
      lockPedalForceAfter: is.lockPedalForce,
      frontShareBefore: was.frontShare,
      frontShareAfter: is.frontShare,
      pedalTravelRatio: travel,
      distanceBefore: was.distance,
      distanceAfter: is.distance,
    };
    return { outputs, working, warnings: warningsOf(before, after, travel) };
  },
});

function answers(stop: StopOnRoad) {
  return {
    deceleration: stop.deceleration * standardGravity,
    firstAxle: firstAxleText(stop),
    lockDeceleration: stop.lock === undefined ? null : stop.lock.deceleration * standardGravity,
    lockPedalForce: stop.lock?.pedalForce ?? null,
    frontShare: stop.frontShare ?? null,
    distance: stop.distance,
  };
}

function systemSteps(prefix: string, of: SystemInput, stop: StopOnRoad) {
  return [
    ...givenSteps(systemSchema, of, { symbols: systemSymbols, prefix }),
    ...axleSteps("Front", of.front, prefix),
    ...axleSteps("Rear", of.rear, prefix),
    ...stopSteps(stop, prefix),
  ];
}

/** Cylinders that the fluid fills, both wheels: two pads or two shoes each. */
const axleArea = ({ pistonDiameters }: AxleInput): number => 4 * pistonsArea(pistonDiameters);

function travelRatio(before: SystemInput, after: SystemInput): number | null {
  if (before.rearMasterBore !== undefined || after.rearMasterBore !== undefined) return null;
  const travel = (of: SystemInput) =>
    ((axleArea(of.front) + axleArea(of.rear)) * of.pedalRatio) / pistonArea(of.masterBore);
  return travel(after) / travel(before);
}

function warningsOf(before: StopOnRoad, after: StopOnRoad, travel: number | null): string[] {
  const warnings = [...stopWarnings(before, "before: "), ...stopWarnings(after, "after: ")];
  const moved = (after.frontShare ?? 0) - (before.frontShare ?? 0);
  if (Math.abs(moved) > 0.03)
    warnings.push(
      `The balance moves ${(Math.abs(moved) * 100).toFixed(1)} points to the ${moved > 0 ? "front" : "rear"}.`,
    );
  if (travel !== null && travel > 1.15)
    warnings.push(
      "The pedal grows longer by more than 15 %: see that the master cylinder's stroke is enough.",
    );
  return warnings;
}
