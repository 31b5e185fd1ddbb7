import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import type { Thread } from "../quantity/designation/thread";
import { worked } from "../spring/worked";
import { gradeField, gradeSteps, strengthOf, threadField, threadSteps } from "./field";
import { boltCaution, iso898, saeJ429, shigleyTorque, vdi2230, workshop } from "./source";
import { boltLoads } from "./strength";
import { nutFactors, tighteningStress, torquePerForce, usualHeadDiameter } from "./torque";

const frictionField = (label: string, help: string) => quantity("ratio", { label, help, min: 0, max: 0.6 });
const frictionFields = {
  leastFriction: frictionField(
    "Least friction",
    "In thread and under the head; oiled about 0.10, anti-seize 0.08",
  ),
  greatestFriction: frictionField("Greatest friction", "Oiled about 0.16, dry plated 0.20"),
  headDiameter: quantity("length", {
    label: "Mean diameter of the turned face",
    help: "Left out, 1.3 d, as for a hexagon",
    above: 0,
    max: 0.2,
    unit: "mm",
  }).optional(),
};
const source = [shigleyTorque, vdi2230, iso898, saeJ429, workshop] as const;
const validity =
  "A spanner on a clean hexagon, the same friction in the thread and under the head within the range given. A prevailing-torque nut needs its own running torque on top.";

const preloadInput = z.object({
  thread: threadField(),
  grade: gradeField,
  torque: quantity("torque", { label: "Tightening torque", above: 0, max: 2000, unit: "N·m" }),
  ...frictionFields,
});

export const boltPreloadComputation = defineComputation({
  name: "fastener.preload",
  title: "Clamp force of a tightening torque",
  summary:
    "Between what limits the clamp force of a bolt lies, as friction may be, and how near that is to its proof load.",
  input: preloadInput,
  outputs: {
    leastPreload: { label: "Least clamp force", dimension: "force", unit: "kN" },
    greatestPreload: { label: "Greatest clamp force", dimension: "force", unit: "kN" },
    leastShare: {
      how: ["F_min/F_p", "F_min/F_p"],
      label: "Least, share of proof load",
      dimension: "ratio",
      unit: "%",
    },
    greatestShare: {
      how: ["F_max/F_p", "F_max/F_p"],
      label: "Greatest, share of proof load",
      dimension: "ratio",
      unit: "%",
    },
    tighteningShare: {
      how: ["σ_v/R_e", "σ_v/R_e"],
      label: "Greatest stress while tightening, share of yield",
      dimension: "ratio",
      unit: "%",
    },
    verdict: {
      how: [
        "verdict",
        "greatest clamp force and greatest stress while tightening against proof load and yield",
      ],
      label: "Verdict",
      dimension: "text",
    },
  },
  source,
  validity,
  caution: boltCaution,
  example: { thread: "M10x1.5", grade: "8.8", torque: "40 N·m", leastFriction: 0.1, greatestFriction: 0.16 },
  compute(given) {
    const { thread, grade, torque } = given;
    const strength = strengthOf(grade, thread);
    const { proof } = boltLoads(thread, strength);
    const arms = armsOf(given);
    const [least, greatest] = [torque / arms.greatest, torque / arms.least];
    const tightening = tighteningStress(thread, greatest, given.leastFriction) / strength.yield;
    const working = () => [
      ...threadSteps(thread),
      ...gradeSteps(grade, strength),
      ...armSteps(given, arms),
      ...worked([
        ["T", "Tightening torque", "given", torque, "torque", "N·m"],
        ["F_p", "Proof load", "A_s·S_p", proof, "force", "kN"],
        ["F_min", "Least clamp force", "T/q_max", least, "force", "kN"],
        ["F_max", "Greatest clamp force", "T/q_min", greatest, "force", "kN"],
        [
          "σ_v",
          "Stress while tightening",
          "√(σ² + 3τ²) on d_s",
          tightening * strength.yield,
          "pressure",
          "MPa",
        ],
      ]),
    ];
    const outputs = {
      leastPreload: least,
      greatestPreload: greatest,
      leastShare: least / proof,
      greatestShare: greatest / proof,
      tighteningShare: tightening,
      verdict: verdictOf(greatest / proof, tightening),
    };
    return { outputs, working, warnings: warningsOf(least / proof) };
  },
});

const torqueInput = z.object({
  thread: threadField(),
  grade: gradeField,
  proofShare: quantity("ratio", {
    label: "Wanted clamp force, share of proof load",
    help: "75 % for bolts that are used again, 90 % for good",
    above: 0,
    max: 1,
    unit: "%",
  }),
  ...frictionFields,
});

export const boltTorqueComputation = defineComputation({
  name: "fastener.torque",
  title: "Torque for a clamp force",
  summary: "The torque that must not be passed for a wanted clamp force, and how little it may then give.",
  input: torqueInput,
  outputs: {
    torque: { label: "Torque", dimension: "torque", unit: "N·m" },
    wantedPreload: {
      label: "Clamp force wanted, reached at the least friction",
      dimension: "force",
      unit: "kN",
    },
    leastPreload: { label: "Clamp force at the greatest friction", dimension: "force", unit: "kN" },
    byNutFactor: { label: "For comparison, T = 0.2·d·F (zinc plated)", dimension: "torque", unit: "N·m" },
  },
  source,
  validity: `${validity} The torque is set for the least friction, so that the wanted force is never passed.`,
  caution: boltCaution,
  example: {
    thread: "3/8-24 UNF",
    grade: "grade 8",
    proofShare: "75 %",
    leastFriction: 0.1,
    greatestFriction: 0.16,
  },
  compute(given) {
    const { thread, grade } = given;
    const strength = strengthOf(grade, thread);
    const wanted = given.proofShare * boltLoads(thread, strength).proof;
    const arms = armsOf(given);
    const torque = wanted * arms.least;
    const leastPreload = torque / arms.greatest;
    const byNutFactor = nutFactors.zinc.factor * thread.majorDiameter * wanted;
    const tightening = tighteningStress(thread, wanted, given.leastFriction) / strength.yield;
    const working = () => [
      ...threadSteps(thread),
      ...gradeSteps(grade, strength),
      ...armSteps(given, arms),
      ...worked([
        ["φ", "Share of proof load", "given", given.proofShare, "ratio", "%"],
        ["F", "Clamp force wanted", "φ·A_s·S_p", wanted, "force", "kN"],
        ["T", "Torque", "F·q_min", torque, "torque", "N·m"],
        ["F_min", "Clamp force at the greatest friction", "T/q_max", leastPreload, "force", "kN"],
        ["T_K", "For comparison, by the nut factor", "0.2·d·F", byNutFactor, "torque", "N·m"],
      ]),
    ];
    const outputs = { torque, wantedPreload: wanted, leastPreload, byNutFactor };
    const warnings =
      tightening > 1
        ? ["While it is tightened the bolt yields: want a smaller share of its proof load."]
        : [];
    return { outputs, working, warnings };
  },
});

interface FrictionInput {
  readonly thread: Thread;
  readonly leastFriction: number;
  readonly greatestFriction: number;
  readonly headDiameter?: number | undefined;
}

/** Torque per newton at the least and the greatest friction, m. */
function armsOf({ thread, leastFriction, greatestFriction, headDiameter }: FrictionInput) {
  if (leastFriction > greatestFriction)
    throw new CalcRefusal(
      "INVERTED_FRICTION",
      `the least friction must not exceed the greatest, but ${leastFriction} > ${greatestFriction}`,
      "leastFriction",
    );
  const face = headDiameter ?? usualHeadDiameter(thread.majorDiameter);
  const arm = (friction: number) =>
    torquePerForce(thread, { thread: friction, head: friction, headDiameter: face });
  return { least: arm(leastFriction), greatest: arm(greatestFriction), face };
}

function armSteps(given: FrictionInput, { least, greatest, face }: ReturnType<typeof armsOf>): WorkingStep[] {
  const origin = given.headDiameter === undefined ? "taken: 1.3 d" : "given";
  const formula = "d₂/2·(P + π·μ·d₂/cos α)/(π·d₂ − μ·P/cos α) + μ·D_h/2";
  return worked([
    ["μ_min", "Least friction", "given", given.leastFriction, "ratio"],
    ["μ_max", "Greatest friction", "given", given.greatestFriction, "ratio"],
    ["D_h", "Mean diameter of the turned face", origin, face, "length", "mm"],
    ["q_min", "Torque per newton at the least friction", formula, least, "length", "mm"],
    ["q_max", "Torque per newton at the greatest friction", formula, greatest, "length", "mm"],
    [
      "K",
      "Nut factor at least and greatest friction, mean",
      "q/d",
      (least + greatest) / 2 / given.thread.majorDiameter,
      "ratio",
    ],
  ]);
}

function verdictOf(greatestShare: number, tightening: number): string {
  if (tightening > 1) return "too much: at the least friction the bolt yields while it is tightened";
  return greatestShare > 0.9
    ? "near its limit: above 90 % of proof load at the least friction"
    : "holds below 90 % of proof load";
}

function warningsOf(leastShare: number): string[] {
  return leastShare < 0.3
    ? [
        "At the greatest friction the clamp force is below 30 % of the proof load: the joint may slip or work loose.",
      ]
    : [];
}
