import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { worked } from "../spring/worked";
import { gradeField, gradeSteps, preloadField, strengthOf, threadField, threadSteps } from "./field";
import { jointConstant, jointForces } from "./joint";
import { boltCaution, iso898, saeJ429, shigleyJoint } from "./source";
import { stressArea } from "./thread-form";

const input = z.object({
  thread: threadField(),
  grade: gradeField,
  preload: preloadField,
  load: quantity("force", {
    label: "Load that pulls the joint apart, per bolt",
    min: 0,
    max: 1e6,
    unit: "kN",
  }),
  boltRate: quantity("rate", {
    label: "Rate of the bolt",
    help: "A·E over its length",
    above: 0,
    unit: "N/mm",
  }),
  memberRate: quantity("rate", {
    label: "Rate of the clamped parts",
    help: "Steel: two to four times the bolt's",
    above: 0,
    unit: "N/mm",
  }),
});

export const jointComputation = defineComputation({
  name: "fastener.joint",
  title: "A preloaded joint under load",
  summary:
    "How much of an outer load the bolt feels, what clamp force is left, and when the joint comes apart.",
  input,
  outputs: {
    boltForce: { label: "Force in the bolt", dimension: "force", unit: "kN" },
    boltStress: { how: ["σ", "F_b/A_s"], label: "Stress in the bolt", dimension: "pressure", unit: "MPa" },
    proofShare: {
      how: ["σ/S_p", "σ over proof stress"],
      label: "Stress, share of proof stress",
      dimension: "ratio",
      unit: "%",
    },
    clamp: { label: "Clamp force left", dimension: "force", unit: "kN" },
    separation: { label: "Load at which the joint comes apart", dimension: "force", unit: "kN" },
    constant: { label: "Share of the load that the bolt feels", dimension: "ratio" },
  },
  source: [shigleyJoint, iso898, saeJ429],
  validity: "A load along the bolt, straight through the joint; elastic bolt and parts.",
  caution: boltCaution,
  example: {
    thread: "3/4-16 UNF",
    grade: "grade 5",
    preload: "111.2 kN",
    load: "26.7 kN",
    boltRate: "1138 N/mm",
    memberRate: "2417 N/mm",
  },
  compute(given) {
    const { thread, grade, preload, load } = given;
    const strength = strengthOf(grade, thread);
    const constant = jointConstant(given.boltRate, given.memberRate);
    const forces = jointForces({ preload, load, constant });
    const boltStress = forces.bolt / stressArea(thread);
    const working = () => [
      ...threadSteps(thread),
      ...gradeSteps(grade, strength),
      ...worked([
        ["F_i", "Clamp force", "given", preload, "force", "kN"],
        ["P", "Load", "given", load, "force", "kN"],
        ["C", "Joint constant", "k_b/(k_b + k_m)", constant, "ratio"],
        ["F_b", "Force in the bolt", "F_i + C·P", forces.bolt, "force", "kN"],
        ["F_m", "Clamp force left", "F_i − (1 − C)·P", forces.clamp, "force", "kN"],
        ["P_0", "Load at separation", "F_i/(1 − C)", forces.separation, "force", "kN"],
      ]),
    ];
    const outputs = {
      boltForce: forces.bolt,
      boltStress,
      proofShare: boltStress / strength.proof,
      clamp: forces.clamp,
      separation: forces.separation,
      constant,
    };
    const warnings = [
      ...(forces.clamp === 0
        ? ["The joint has come apart: the bolt carries everything and works to and fro."]
        : []),
      ...(boltStress > strength.proof ? ["The bolt is stressed beyond its proof stress."] : []),
    ];
    return { outputs, working, warnings };
  },
});
