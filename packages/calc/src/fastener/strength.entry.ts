import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { worked } from "../spring/worked";
import { gradeField, gradeSteps, strengthOf, threadField, threadSteps } from "./field";
import { boltCaution, eurocode, iso898, saeJ429, threadBasics } from "./source";
import { boltLoads, shearCapacity } from "./strength";
import { rootDiameter, stressArea } from "./thread-form";

const input = z.object({
  thread: threadField(),
  grade: gradeField,
  shankDiameter: quantity("length", {
    label: "Plain shank",
    help: "Left out, the thread's nominal diameter",
    above: 0,
    max: 0.1,
    unit: "mm",
  }).optional(),
  planes: z.union([z.literal(1), z.literal(2)]).meta({
    title: "Shear planes",
    description: "1: the joint slides at one face; 2: the bolt is held on both sides of the link",
  }),
});

export const boltStrengthComputation = defineComputation({
  name: "fastener.strength",
  title: "Strength of a bolt",
  summary:
    "Stress area, proof, yield and breaking load of a bolt, and what it carries in shear in thread and shank.",
  input,
  outputs: {
    stressArea: { label: "Tensile stress area", dimension: "area", unit: "mm²" },
    rootDiameter: { label: "Root diameter of the thread", dimension: "length", unit: "mm" },
    proofLoad: { label: "Proof load", dimension: "force", unit: "kN" },
    yieldLoad: { how: ["F_y", "A_s·R_e"], label: "Load at yield", dimension: "force", unit: "kN" },
    tensileLoad: { label: "Least breaking load", dimension: "force", unit: "kN" },
    threadShear: { label: "Shear at break, thread in the plane", dimension: "force", unit: "kN" },
    shankShear: { label: "Shear at break, shank in the plane", dimension: "force", unit: "kN" },
    threadShearYield: {
      how: ["V_sy", "n·A_s·R_e/√3"],
      label: "Shear at yield, thread in the plane",
      dimension: "force",
      unit: "kN",
    },
    shankShearYield: { label: "Shear at yield, shank in the plane", dimension: "force", unit: "kN" },
  },
  source: [iso898, saeJ429, threadBasics, eurocode],
  validity:
    "New bolts of the marked grade, pulled straight, static load. Bending, fatigue, heat and rust take away much; see fastener.spacerStack for bending.",
  caution: boltCaution,
  example: { thread: "3/8-24 UNF", grade: "grade 8", planes: 1 },
  compute({ thread, grade, shankDiameter, planes }) {
    const strength = strengthOf(grade, thread);
    const loads = boltLoads(thread, strength);
    const shank = (Math.PI * (shankDiameter ?? thread.majorDiameter) ** 2) / 4;
    const inThread = shearCapacity(stressArea(thread), strength, planes);
    const inShank = shearCapacity(shank, strength, planes);
    const working = () => [
      ...threadSteps(thread),
      ...gradeSteps(grade, strength),
      ...worked([
        ["F_p", "Proof load", "A_s·S_p", loads.proof, "force", "kN"],
        ["F_m", "Least breaking load", "A_s·R_m", loads.tensile, "force", "kN"],
        ["A", "Section of the shank", "π/4·d²", shank, "area", "mm²"],
        ["n", "Shear planes", "given", planes, "count"],
        ["V_s", "Shear at break, thread", "n·0.6·A_s·R_m", inThread.ultimate, "force", "kN"],
        ["V", "Shear at break, shank", "n·0.6·A·R_m", inShank.ultimate, "force", "kN"],
        ["V_y", "Shear at yield, shank", "n·A·R_e/√3", inShank.yield, "force", "kN"],
      ]),
    ];
    const outputs = {
      stressArea: stressArea(thread),
      rootDiameter: rootDiameter(thread),
      proofLoad: loads.proof,
      yieldLoad: loads.yield,
      tensileLoad: loads.tensile,
      threadShear: inThread.ultimate,
      shankShear: inShank.ultimate,
      threadShearYield: inThread.yield,
      shankShearYield: inShank.yield,
    };
    return { outputs, working, warnings: [] };
  },
});
