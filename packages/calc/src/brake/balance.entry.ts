import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { standardGravity } from "../quantity/unit-table/unit";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { axleLoadsUnderBraking, criticalDeceleration, firstLock, idealFrontShare } from "./balance";
import { carFields, carSymbols } from "./field";
import { leastDecelerationAtAdhesion } from "./regulation";
import { brakeCaution, gillespie, limpert, r13h } from "./source";

const input = z.object({
  ...carFields,
  frontShare: quantity("ratio", {
    label: "Share of the brake force at the front",
    help: "At the road, before a valve comes in",
    min: 0,
    max: 1,
    unit: "%",
  }),
  adhesion: quantity("ratio", {
    label: "Adhesion of tyre on road",
    help: "Dry road 0.8 to 1, wet 0.4 to 0.7",
    above: 0,
    max: 2,
  }),
});

export const brakeBalanceComputation = defineComputation({
  name: "brake.balance",
  title: "Brake balance against the ideal",
  summary: "The front share a car wants on a road, which axle locks first with the share it has, and when.",
  input,
  outputs: {
    firstAxle: {
      how: ["first", "the axle whose share brings it to k first: front beyond β_i, rear below"],
      label: "Locks first",
      dimension: "text",
    },
    deceleration: { label: "Deceleration when the first axle locks", dimension: "acceleration", unit: "g" },
    efficiency: {
      how: ["η", "z/(k·g)"],
      label: "Share of the adhesion that is used",
      dimension: "ratio",
      unit: "%",
    },
    idealFrontShare: { label: "Ideal front share on this road", dimension: "ratio", unit: "%" },
    criticalDeceleration: {
      label: "Above this deceleration the rear locks first",
      dimension: "acceleration",
      unit: "g",
    },
  },
  source: [limpert, gillespie, r13h],
  validity:
    "A rigid car braking straight on the level; the same adhesion at all wheels; no aerodynamic load, no valve.",
  caution: brakeCaution,
  example: {
    frontMass: "470 kg",
    rearMass: "510 kg",
    wheelbase: "2300 mm",
    cgHeight: "460 mm",
    frontShare: "70 %",
    adhesion: 0.9,
  },
  compute(given) {
    const { frontShare, adhesion } = given;
    const lock = firstLock(given, frontShare, adhesion);
    const ideal = idealFrontShare(given, adhesion);
    const critical = criticalDeceleration(given, frontShare);
    const loads = axleLoadsUnderBraking(given, lock.deceleration);
    const working = () => [
      ...givenSteps(input, given, { symbols: { ...carSymbols, frontShare: "β", adhesion: "k" } }),
      ...worked([
        ["β_i", "Ideal front share at z = k", "(b + z·h)/L, b = L·m_f/m", ideal, "ratio", "%"],
        ["z_c", "Critical deceleration", "(β·L − b)/h", critical * standardGravity, "acceleration", "g"],
        [
          "z",
          "Deceleration at first lock",
          "min(k·b/(β·L − k·h), k·a/((1 − β)·L + k·h))",
          lock.deceleration * standardGravity,
          "acceleration",
          "g",
          convention,
        ],
        ["N_f", "Load on the front axle then", "g·(m_f + m·z·h/L)", loads.front, "force", "N"],
        ["N_r", "Load on the rear axle then", "g·(m_r − m·z·h/L)", loads.rear, "force", "N"],
      ]),
    ];
    const outputs = {
      firstAxle: lock.axle === "together" ? "both together" : lock.axle,
      deceleration: lock.deceleration * standardGravity,
      efficiency: lock.deceleration / adhesion,
      idealFrontShare: ideal,
      criticalDeceleration: critical <= 0 ? null : critical * standardGravity,
    };
    return { outputs, working, warnings: warningsOf(lock, critical, adhesion) };
  },
});

const convention = "The axle that first reaches the adhesion given is the one that locks.";

function warningsOf(lock: ReturnType<typeof firstLock>, critical: number, adhesion: number): string[] {
  const warnings: string[] = [];
  if (lock.axle === "rear") warnings.push("The rear wheels lock first: the car spins.");
  if (critical <= 0) warnings.push("The rear locks first on every road.");
  const inRange = adhesion >= 0.2 && adhesion <= 0.8;
  if (inRange && lock.deceleration < leastDecelerationAtAdhesion(adhesion))
    warnings.push("Uses less of the adhesion than UN R13-H Annex 5 asks, z ≥ 0.1 + 0.7 (k − 0.2).");
  return warnings;
}
