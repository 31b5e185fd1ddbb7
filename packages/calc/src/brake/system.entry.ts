import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { standardGravity } from "../quantity/unit-table/unit";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { pistonsArea, systemOf, wheelTorquePerPressure } from "./assemble";
import { withDefault } from "./default";
import {
  axleSchema,
  axleSymbols,
  carFields,
  carSymbols,
  pedalFields,
  systemFields,
  systemSymbols,
} from "./field";
import { type StopOnRoad, stopOnRoad } from "./report";
import { brakeCaution, limpert, r13h, statics } from "./source";

/** Fields of the road and the foot, shared with the comparison. */
export const roadFields = {
  pedalForce: pedalFields.pedalForce,
  adhesion: quantity("ratio", {
    label: "Adhesion of tyre on road",
    help: "Dry road 0.8 to 1",
    above: 0,
    max: 2,
  }),
  speed: withDefault(
    quantity("speed", { label: "Speed to stop from", above: 0, max: 120, unit: "km/h" }),
    "100 km/h",
  ),
};

const input = z.object({ ...carFields, ...roadFields, ...systemFields });

export const brakeSystemComputation = defineComputation({
  name: "brake.system",
  title: "Brakes from pedal to road",
  summary: "Line pressures, balance, deceleration, first lock and stopping distance of a whole brake system.",
  input,
  outputs: {
    deceleration: { label: "Deceleration reached, no wheel locked", dimension: "acceleration", unit: "g" },
    firstAxle: {
      how: ["first", "the axle that first reaches k times its load"],
      label: "Locks first",
      dimension: "text",
    },
    lockDeceleration: { label: "Deceleration when it locks", dimension: "acceleration", unit: "g" },
    lockPedalForce: {
      how: ["F_l", "pedal force at which it does"],
      label: "Pedal force that locks it",
      dimension: "force",
      unit: "N",
    },
    frontShare: {
      how: ["β", "B_f/(B_f + B_r)"],
      label: "Share of the braking at the front",
      dimension: "ratio",
      unit: "%",
    },
    idealFrontShare: { label: "Ideal front share at that deceleration", dimension: "ratio", unit: "%" },
    frontPressure: { label: "Line pressure, front", dimension: "pressure", unit: "bar" },
    rearPressure: { label: "Line pressure, rear", dimension: "pressure", unit: "bar" },
    distance: {
      how: ["s", "as brake.stoppingDistance, from v at z, its build-up time taken"],
      label: "Braking distance at that deceleration",
      dimension: "length",
      unit: "m",
    },
  },
  source: [statics, limpert, r13h],
  validity:
    "A sound system, straight braking on the level, the same adhesion at all wheels, constant friction; wheel inertia, engine braking and aerodynamic load left out.",
  caution: brakeCaution,
  example: {
    frontMass: "470 kg",
    rearMass: "510 kg",
    wheelbase: "2300 mm",
    cgHeight: "460 mm",
    pedalForce: "220 N",
    adhesion: 0.9,
    pedalRatio: 5,
    masterBore: "0.7 in",
    front: {
      kind: "disc",
      pistonDiameters: ["48 mm"],
      friction: 0.38,
      discDiameter: "10 1/2 in",
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
  },
  compute(given) {
    const stop = stopOnRoad(systemOf(given), given, given);
    const { lock } = stop;
    const working = () => [
      ...givenSteps(input, given, {
        symbols: { ...carSymbols, ...systemSymbols, adhesion: "k", speed: "v" },
      }),
      ...axleSteps("Front", given.front),
      ...axleSteps("Rear", given.rear),
      ...stopSteps(stop),
    ];
    const outputs = {
      deceleration: stop.deceleration * standardGravity,
      firstAxle: firstAxleText(stop),
      lockDeceleration: lock === undefined ? null : lock.deceleration * standardGravity,
      lockPedalForce: lock?.pedalForce ?? null,
      frontShare: stop.frontShare ?? null,
      idealFrontShare: stop.idealFrontShare,
      frontPressure: stop.pressure.front,
      rearPressure: stop.pressure.rear,
      distance: stop.distance,
    };
    return { outputs, working, warnings: stopWarnings(stop) };
  },
});

/** Which axle locks first, in words. */
export function firstAxleText({ lock }: StopOnRoad): string {
  if (lock === undefined) return "none on this road";
  return lock.axle === "together" ? "both together" : lock.axle;
}

/** What to say about a stop. */
export function stopWarnings({ lock, locks }: StopOnRoad, prefix = ""): string[] {
  const warnings: string[] = [];
  if (lock?.axle === "rear") warnings.push(`${prefix}the rear wheels lock first: the car spins.`);
  if (locks)
    warnings.push(`${prefix}this pedal force locks a wheel on this road; figures are for the moment before.`);
  if (lock !== undefined && lock.pedalForce > 500)
    warnings.push(
      `${prefix}more than 500 N at the pedal is needed to use the road: too much for many drivers.`,
    );
  return warnings.map((text) => text.charAt(0).toUpperCase() + text.slice(1));
}

/** The lines of an axle's brakes. */
export function axleSteps(
  axle: "Front" | "Rear",
  of: z.output<typeof axleSchema>,
  prefix = "",
): WorkingStep[] {
  const perPressure = wheelTorquePerPressure(of, `${axle.toLowerCase()}.`);
  const formula = of.kind === "disc" ? "2·μ·A·r_e per bar, A of one side of the disc" : "C*·A·D/2 per bar";
  const area = pistonsArea(of.pistonDiameters);
  return [
    ...givenSteps(axleSchema, of, { symbols: axleSymbols, prefix: `${prefix}${axle}: ` }),
    ...worked([["A", `${prefix}${axle}: pistons of one side`, "Σπ·d²/4", area, "area", "mm²"]]),
    ...worked([
      ["T₁", `${prefix}${axle}: torque of one wheel at 1 bar`, formula, perPressure * 1e5, "torque", "N·m"],
    ]),
  ];
}

/** The lines of the stop itself. */
export function stopSteps(stop: StopOnRoad, prefix = ""): WorkingStep[] {
  const { pressure, force, lock } = stop;
  const z = (value: number | undefined) => (value === undefined ? null : value * standardGravity);
  return worked([
    [
      "F",
      `${prefix}Force at the push rod`,
      "F_p·i; with a servo min(g·F_p·i, F_p·i + F_s)",
      stop.rodForce,
      "force",
      "N",
    ],
    ["p_f", `${prefix}Pressure, front`, "F/A_m, A_m = π·d²/4", pressure.front, "pressure", "bar"],
    [
      "p_r",
      `${prefix}Pressure, rear`,
      "F/A_m, A_m = π·d²/4; beyond a valve min(p, p_c) + s·max(0, p − p_c)",
      pressure.rear,
      "pressure",
      "bar",
    ],
    ["B_f", `${prefix}Brake force, front axle`, "2·T/r_t", force.front, "force", "N", asIf],
    ["B_r", `${prefix}Brake force, rear axle`, "2·T/r_t", force.rear, "force", "N", asIf],
    [
      "z_l",
      `${prefix}Deceleration at first lock`,
      "B = k·N at the first axle",
      z(lock?.deceleration),
      "acceleration",
      "g",
      rule,
    ],
    [
      "z",
      `${prefix}Deceleration reached`,
      "(B_f + B_r)/(m·g), at most z_l",
      z(stop.deceleration),
      "acceleration",
      "g",
    ],
    ["β_i", `${prefix}Ideal front share`, "(b + z·h)/L", stop.idealFrontShare, "ratio", "%"],
  ]);
}

const asIf = "as long as no wheel locks";
const rule = "Convention: the axle that first reaches the adhesion given.";
