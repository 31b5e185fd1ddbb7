import type { WorkingStep } from "../catalogue/computation";
import { designation } from "../catalogue/designation-field";
import { quantity } from "../catalogue/field";
import { type Grade, gradeStrength } from "../quantity/designation/grade";
import type { Thread } from "../quantity/designation/thread";
import { worked } from "../spring/worked";
import type { BoltStrength } from "./strength";
import { pitchDiameter, rootDiameter, stressArea, stressDiameter } from "./thread-form";

/** A field for a thread by its designation. */
export const threadField = (label = "Thread") => designation("thread", { label, help: "LH for left hand" });

/** A field for a strength class by its designation. */
export const gradeField = designation("grade", { label: "Strength grade", help: "As marked on the head" });

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
