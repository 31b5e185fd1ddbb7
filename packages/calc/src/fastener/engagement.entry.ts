import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { worked } from "../spring/worked";
import {
  engagementByRule,
  engagementNeeded,
  stripAreas,
  type TappedMaterial,
  tappedMaterials,
} from "./engagement";
import { gradeField, gradeSteps, strengthOf, threadField, threadSteps } from "./field";
import { boltCaution, engagementRule, handbookEngagement, iso898, saeJ429, threadFits } from "./source";

const materials = Object.keys(tappedMaterials) as [TappedMaterial, ...TappedMaterial[]];
const input = z.object({
  thread: threadField(),
  grade: gradeField,
  material: z
    .enum(materials)
    .meta({ title: "Screwed into", description: "castIron also brass and bronze; aluminium also zinc" }),
  tappedTensile: quantity("pressure", {
    label: "Tensile strength of that material",
    help: "Aluminium castings 150 to 250 MPa, cast iron 200 to 250, mild steel 400. Left out, only the rule of thumb is given",
    above: 0,
    unit: "MPa",
  }).optional(),
  engagement: quantity("length", {
    label: "Full thread engaged, as it is",
    above: 0,
    max: 0.3,
    unit: "mm",
  }).optional(),
});

export const engagementComputation = defineComputation({
  name: "fastener.engagement",
  title: "Thread engagement needed",
  summary: "How much thread must be engaged so that the bolt breaks before the thread strips.",
  input,
  outputs: {
    needed: {
      label: "Engagement so that the bolt breaks first",
      dimension: "length",
      unit: "mm",
      decimals: 1,
    },
    rule: {
      how: ["rule", "rule of thumb above for this material"],
      label: "Rule of thumb",
      dimension: "length",
      unit: "mm",
      decimals: 1,
    },
    inDiameters: {
      how: ["L/d", "greatest of L_b and L_t over d"],
      label: "Needed, in diameters",
      dimension: "ratio",
    },
    weaker: {
      how: ["weaker", "the thread that would need the greater length"],
      label: "What would strip",
      dimension: "text",
    },
    verdict: {
      how: ["verdict", "engagement there is against engagement needed"],
      label: "Verdict",
      dimension: "text",
    },
  },
  source: [handbookEngagement, threadFits, engagementRule, iso898, saeJ429],
  validity:
    "Sound full threads of the ordinary fit, shear strength taken as half the tensile. Point and mouth of the thread do not count: allow about a pitch more.",
  caution: boltCaution,
  example: {
    thread: "M10x1.5",
    grade: "8.8",
    material: "aluminium",
    tappedTensile: "200 MPa",
    engagement: "22 mm",
  },
  compute(given) {
    const { thread, grade, material, tappedTensile } = given;
    const strength = strengthOf(grade, thread);
    const rule = engagementByRule(thread.majorDiameter, material);
    const found =
      tappedTensile === undefined ? undefined : engagementNeeded(thread, strength.tensile, tappedTensile);
    const areas = stripAreas(thread);
    const basis = `per mm of engagement; basis: ${areas.basis}`;
    const working = () => [
      ...threadSteps(thread),
      ...gradeSteps(grade, strength),
      ...worked([
        [
          "A_b",
          "Strip area of the bolt's thread",
          "π·D₁·(1/2 + tan α·(d₂ − D₁)/P)",
          areas.bolt * 1e-3,
          "area",
          "mm²",
          basis,
        ],
        [
          "A_t",
          "Strip area of the tapped thread",
          "π·d·(1/2 + tan α·(d − D₂)/P)",
          areas.tapped * 1e-3,
          "area",
          "mm²",
          basis,
        ],
        [
          "L_b",
          "Against the bolt's thread",
          "A_s·R_m/(R_m/2·A_b), A_b per mm",
          found?.againstBolt ?? null,
          "length",
          "mm",
        ],
        [
          "L_t",
          "Against the tapped thread",
          "A_s·R_m/(R_t/2·A_t), A_t per mm",
          found?.againstTapped ?? null,
          "length",
          "mm",
        ],
        [
          "L_r",
          `Rule of thumb, ${tappedMaterials[material].label}`,
          `${tappedMaterials[material].diameters}·d`,
          rule,
          "length",
          "mm",
        ],
      ]),
    ];
    const needed = found?.needed ?? null;
    const outputs = {
      needed,
      rule,
      inDiameters: needed === null ? null : needed / thread.majorDiameter,
      weaker: weakerText(found),
      verdict: verdictOf(given.engagement, needed, rule),
    };
    return { outputs, working, warnings: [] };
  },
});

function weakerText(found: ReturnType<typeof engagementNeeded> | undefined): string | null {
  if (found === undefined) return null;
  return found.againstTapped > found.againstBolt ? "the tapped thread" : "the bolt's thread";
}

function verdictOf(engaged: number | undefined, needed: number | null, rule: number): string {
  if (engaged === undefined) return "cannot tell: the engagement as it is was not given";
  if (needed === null)
    return engaged < rule
      ? "short of the rule of thumb"
      : "cannot tell: meets the rule of thumb, the material's strength was not given";
  return engaged < needed ? "strips before the bolt breaks" : "the bolt breaks first";
}
