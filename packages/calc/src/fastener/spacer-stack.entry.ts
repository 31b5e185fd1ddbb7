import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { moduliOrSteel } from "../spring/material";
import { worked } from "../spring/worked";
import { gradeField, gradeSteps, preloadField, strengthOf, threadField, threadSteps } from "./field";
import { beam, boltCaution, iso898, saeJ429, threadBasics, vdi2230 } from "./source";
import { spacerStack, stackOpeningForce, threadEnduranceAmplitude, yieldForce } from "./spacer-stack";

const input = z.object({
  thread: threadField(),
  grade: gradeField.optional().meta({
    title: "Strength grade",
    description:
      "As marked on the head: 8.8, 10.9, grade 5, grade 8. Not marked: leave out, and nothing is promised.",
  }),
  force: quantity("force", {
    label: "Force of the link across the bolt",
    help: "The greatest: kerbs and potholes give two or three times that of steady cornering",
    above: 0,
    max: 1e5,
    unit: "N",
  }),
  stackLength: quantity("length", {
    label: "Stack between bracket and link",
    help: "All spacers and washers; 0 where the link sits against its bracket",
    min: 0,
    max: 0.3,
    unit: "mm",
  }),
  eyeWidth: quantity("length", {
    label: "Width of the link's eye or ball along the bolt",
    above: 0,
    max: 0.15,
    unit: "mm",
  }),
  section: z.enum(["thread", "shank"]).meta({
    title: "At the bracket's face the bolt is",
    description: "thread where threads reach the face, or are not known to end before it; else shank",
  }),
  shankDiameter: quantity("length", {
    label: "Plain shank",
    help: "Left out, the thread's nominal diameter",
    above: 0,
    max: 0.1,
    unit: "mm",
  }).optional(),
  preload: preloadField.optional(),
  spacerDiameter: quantity("length", {
    label: "Outside diameter of the spacers",
    help: "With the clamp force tells when the stack opens",
    above: 0,
    max: 0.15,
    unit: "mm",
  }).optional(),
});
type Input = z.output<typeof input>;

export const spacerStackComputation = defineComputation({
  name: "fastener.spacerStack",
  title: "A link mounted off its bracket on a stack of spacers",
  summary: "Bending of the bolt that holds a link away from its bracket, against the strength of its grade.",
  input,
  outputs: {
    stress: { label: "Stress in the bolt at the bracket", dimension: "pressure", unit: "MPa" },
    moment: { label: "Bending moment", dimension: "torque", unit: "N·m" },
    section: {
      how: ["section", "where the stress is greatest against R_e: thread or shank at the bracket"],
      label: "Section that governs",
      dimension: "text",
    },
    reserve: { how: ["S", "F_y/F"], label: "Force at yield over the force given", dimension: "ratio" },
    yieldForce: { label: "Force at which the bolt takes a set", dimension: "force", unit: "N" },
    verdict: {
      how: ["verdict", "F against F_y, and against the force at which the stack opens"],
      label: "Verdict",
      dimension: "text",
    },
    momentRatio: {
      how: ["M/M₀", "e over half the eye: the link hard on its bracket"],
      label: "Bending, against the link hard on its bracket",
      dimension: "ratio",
    },
    deflection: { label: "Sideways give at the link", dimension: "length", unit: "mm" },
    rate: { how: ["k", "F/δ"], label: "Rate of the mounting", dimension: "rate", unit: "N/mm" },
    openingForce: { label: "Force at which the stack opens", dimension: "force", unit: "N" },
    enduranceForce: {
      label: "Alternating force a rolled thread stands for ever",
      dimension: "force",
      unit: "N",
    },
  },
  source: [beam, iso898, saeJ429, threadBasics, vdi2230],
  validity:
    "The bolt as a cantilever built in at the bracket, in single shear, static; bracket and nut stiff; spacers not counted on. A link held on both sides is far better off and is not this case. Endurance only for 8.8 to 12.9, M6 and up.",
  caution: `${boltCaution} A bolt on a stack of spacers bends back and forth with every roll of the car and breaks by fatigue, without warning.`,
  example: {
    thread: "M10x1.5",
    grade: "10.9",
    force: "600 N",
    stackLength: "20 mm",
    eyeWidth: "14 mm",
    section: "thread",
    preload: "15 kN",
    spacerDiameter: "18 mm",
  },
  compute(given) {
    const { thread, grade, force, preload, spacerDiameter } = given;
    const { young } = moduliOrSteel({});
    const result = spacerStack(given, young);
    const strength = grade === undefined ? undefined : strengthOf(grade, thread);
    const limit = strength === undefined ? null : yieldForce(given, strength.yield);
    const opening =
      preload === undefined || spacerDiameter === undefined
        ? null
        : stackOpeningForce(
            { preload, arm: result.arm },
            { outer: spacerDiameter, bore: thread.majorDiameter },
          );
    const endurance = enduranceForce(given, result);
    const working = () => [
      ...threadSteps(thread),
      ...(grade === undefined || strength === undefined ? [unknownGrade] : gradeSteps(grade, strength)),
      ...stressSteps(given, result, young),
      ...worked([
        ["F_y", "Force at yield", "√((σ_b + σ_t)² + 3τ²) = R_e", limit, "force", "N"],
        ["F_o", "Force at which the stack opens", "F_v·(D² + d²)/(8·D·e)", opening, "force", "N"],
        [
          "F_a",
          "Alternating force, endurance",
          "0.85·(150/d + 45) MPa·π·d_s³/(32·e)",
          endurance,
          "force",
          "N",
        ],
      ]),
    ];
    const outputs = {
      stress: result.stress,
      moment: result.moment,
      section: `${given.section}, ${(result.diameter * 1000).toFixed(2)} mm`,
      reserve: limit === null ? null : limit / force,
      yieldForce: limit,
      verdict: verdictOf(force, limit),
      momentRatio: result.momentRatio,
      deflection: result.deflection,
      rate: force / result.deflection,
      openingForce: opening,
      enduranceForce: endurance,
    };
    return { outputs, working, warnings: warningsOf({ given, limit, opening, endurance }) };
  },
});

const unknownGrade: WorkingStep = { symbol: "grade", label: "Strength grade", value: "not given" };

function stressSteps(given: Input, of: ReturnType<typeof spacerStack>, young: number): WorkingStep[] {
  const where = given.section === "thread" ? "d_s, stress diameter in the thread" : "plain shank";
  return worked([
    ["F", "Force of the link", "given", given.force, "force", "N"],
    ["e", "Bracket's face to the middle of the eye", "stack + eye/2", of.arm, "length", "mm"],
    ["D_b", "Diameter at the bracket", where, of.diameter, "length", "mm", "The section that governs."],
    ["M", "Bending moment", "F·e", of.moment, "torque", "N·m"],
    ["σ_b", "Bending stress", "32·M/(π·D_b³)", of.bending, "pressure", "MPa"],
    ["σ_t", "Stress of the clamp force", "4·F_v/(π·D_b²)", of.tension, "pressure", "MPa"],
    ["τ", "Mean shear", "4·F/(π·D_b²)", of.shear, "pressure", "MPa"],
    ["σ", "Stress", "√((σ_b + σ_t)² + 3τ²)", of.stress, "pressure", "MPa"],
    ["E", "Young's modulus", "taken: steel", young, "pressure", "GPa"],
    ["δ", "Sideways give", "F·e³/(3·E·I)", of.deflection, "length", "mm"],
  ]);
}

/** For classes the endurance formula is for, at the thread; `null` elsewhere. */
function enduranceForce(
  { grade, section, thread }: Input,
  { diameter, arm }: ReturnType<typeof spacerStack>,
): number | null {
  const covered =
    grade?.system === "ISO 898-1" && Number.parseFloat(grade.class) >= 8.8 && thread.majorDiameter >= 0.006;
  if (!covered || section !== "thread") return null;
  return (threadEnduranceAmplitude(thread.majorDiameter) * Math.PI * diameter ** 3) / (32 * arm);
}

function verdictOf(force: number, limit: number | null): string {
  if (limit === null) return "cannot tell: the grade of the bolt is not known";
  return force < limit ? "stays straight" : "bends: the bolt takes a set";
}

interface Judged {
  readonly given: Input;
  readonly limit: number | null;
  readonly opening: number | null;
  readonly endurance: number | null;
}

/** Below this reserve a suspension bolt has too little in hand for a pothole (common practice). */
const leastReserve = 2;

function warningsOf({ given, limit, opening, endurance }: Judged): string[] {
  const { force } = given;
  const warnings: string[] = [];
  if (limit !== null && force < limit && limit / force < leastReserve)
    warnings.push(`Less than ${leastReserve} times the force bends the bolt: a pothole may.`);
  if (opening !== null && force > opening)
    warnings.push("The stack opens at this force, and the bolt then works to and fro.");
  if (endurance !== null && force > endurance)
    warnings.push(
      "More than a rolled thread stands for ever if the force alternates: it will break by fatigue.",
    );
  if (given.section === "thread")
    warnings.push("Threads at the bracket's face: a bolt with a plain shank there is stronger.");
  return warnings;
}
