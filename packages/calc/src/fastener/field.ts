import { z } from "zod";
import type { WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { type Grade, gradeStrength, parseGrade } from "../quantity/designation/grade";
import { parseThread, type Thread } from "../quantity/designation/thread";
import { NotationError } from "../quantity/notation-error";
import { worked } from "../spring/worked";
import type { BoltStrength } from "./strength";
import { pitchDiameter, rootDiameter, stressArea, stressDiameter } from "./thread-form";

/** Longest designation that is read. */
const designationLimit = 60;

function designation<T>(parse: (entered: string) => T) {
  return (entered: string, context: z.RefinementCtx): T => {
    try {
      return parse(entered);
    } catch (error) {
      if (!(error instanceof NotationError)) throw error;
      const { code, place, understood } = error;
      context.addIssue({
        code: "custom",
        message: error.message,
        params: { code, place, understood, entered },
      });
      return z.NEVER;
    }
  };
}

/** A field for a thread by its designation. */
export const threadField = (title = "Thread") =>
  z
    .string()
    .max(designationLimit)
    .transform(designation(parseThread))
    .meta({ title, description: "By designation: M10x1.25, 3/8-24 UNF, 5/16 BSF, 2 BA; LH for left hand." });

/** A field for a strength class by its designation. */
export const gradeField = z
  .string()
  .max(designationLimit)
  .transform(designation(parseGrade))
  .meta({ title: "Strength grade", description: "As marked on the head: 8.8, 10.9, grade 5, grade 8." });

export const preloadField = quantity("force", {
  label: "Clamp force (preload)",
  min: 0,
  max: 1e6,
  unit: "kN",
});

/**
 * Strengths of a grade at a thread's size.
 * @throws RangeError where the standard does not cover it
 */
export function strengthOf(grade: Grade, thread: Thread): BoltStrength {
  return gradeStrength(grade, thread.majorDiameter);
}

/** The thread, as the first lines of a working. */
export function threadSteps(thread: Thread): WorkingStep[] {
  return [
    { symbol: "thread", label: "Thread", value: thread.canonical },
    ...worked([
      ["d", "Nominal diameter", thread.series, thread.majorDiameter, "length", "mm"],
      ["P", "Pitch", thread.series, thread.pitch, "length", "mm"],
      ["d₂", "Pitch diameter", pitchFormula[thread.system], pitchDiameter(thread), "length", "mm"],
      ["d₃", "Root diameter", rootFormula[thread.system], rootDiameter(thread), "length", "mm"],
      ["d_s", "Stress diameter", "(d₂ + d₃)/2", stressDiameter(thread), "length", "mm"],
      ["A_s", "Tensile stress area", "π/4·d_s²", stressArea(thread), "area", "mm²", convention],
    ]),
  ];
}

/** The grade's strengths, as lines of a working. */
export function gradeSteps(
  grade: Grade,
  { tensile, yield: yieldStrength, proof }: BoltStrength,
): WorkingStep[] {
  return [
    { symbol: "grade", label: "Strength grade", value: `${grade.canonical}, ${grade.system}` },
    ...worked([
      ["R_m", "Tensile strength, least", grade.system, tensile, "pressure", "MPa"],
      ["R_e", "Yield strength, least", grade.system, yieldStrength, "pressure", "MPa"],
      ["S_p", "Proof stress", grade.system, proof, "pressure", "MPa"],
    ]),
  ];
}

const convention =
  "Convention: a bolt is judged on the tensile stress area in the thread and on the shank where it is plain; the root diameter is for comparison.";
const pitchFormula = {
  metric: "d − 0.649519·P",
  unified: "d − 0.649519·P",
  whitworth: "d − 0.640327·P",
  BA: "d − 0.6·P",
} as const;
const rootFormula = {
  metric: "d − 1.226869·P",
  unified: "d − 1.299038·P",
  whitworth: "d − 1.280654·P",
  BA: "d − 1.2·P",
} as const;
