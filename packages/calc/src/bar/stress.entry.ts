import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { assumedSteps, barFields, barOf, barSources, barSymbols, shapeWarnings } from "./field";
import { barRate } from "./rate";
import { barStress } from "./stress";

const input = z.object({
  ...barFields,
  endMovement: quantity("length", {
    label: "Movement of each end, oppositely",
    help: "Or give roll angle, track and motion ratio instead",
    min: 0,
    max: 0.3,
    unit: "mm",
  }).optional(),
  rollAngle: quantity("angle", { label: "Roll angle", min: 0, max: 0.35, unit: "°" }).optional(),
  track: quantity("length", { label: "Track", above: 0, max: 3, unit: "mm" }).optional(),
  motionRatio: quantity("ratio", {
    label: "Motion ratio",
    help: "Bar-end movement per wheel movement",
    above: 0,
    max: 2,
  }).optional(),
  yieldStrength: quantity("pressure", {
    label: "Yield strength of the bar",
    help: "0.2 % proof stress; 55Cr3 hardened and tempered has at least 1200 MPa, mild steel about a fifth of that",
    above: 0,
    unit: "MPa",
  }).optional(),
});
type Input = z.output<typeof input>;

export const barStressComputation = defineComputation({
  name: "bar.stress",
  title: "Anti-roll bar stress",
  summary: "Surface stress of an anti-roll bar at a given roll, against the yield strength of its material.",
  input,
  outputs: {
    stress: { label: "Greatest stress (von Mises)", dimension: "pressure", unit: "MPa" },
    place: { how: ["place", "where the greater of σ_v and σ_A is"], label: "Where", dimension: "text" },
    force: { label: "Force at each drop link", dimension: "force", unit: "N" },
    reserve: {
      how: ["R", "R_p over the greater of σ_v and σ_A"],
      label: "Yield strength over stress",
      dimension: "ratio",
    },
    verdict: { how: ["verdict", "the greater stress against R_p"], label: "Verdict", dimension: "text" },
  },
  source: [
    ...barSources,
    {
      title: "EN 10089 spring steel 55Cr3, works' data sheet",
      locus: "hardened and tempered, Rp0.2",
      status: "read",
    },
  ],
  validity:
    "As the bar's rate; nominal stress without the concentration at bends, clamps, welds, drilled holes or rust pits, and without fatigue.",
  caution:
    "A bar breaks by fatigue well below its yield strength, first at bends, welds and rust pits. A drop link carries the force shown: judge its bolts and brackets too. A competent mechanic decides.",
  example: {
    diameter: "20 mm",
    middleLength: "900 mm",
    leverLength: "200 mm",
    armLength: "215 mm",
    bushSpacing: "700 mm",
    rollAngle: "3°",
    track: "1300 mm",
    motionRatio: 0.6,
    yieldStrength: "1200 MPa",
  },
  compute(given) {
    const { bar, flexibility, moduli } = barOf(given);
    const movement = movementOf(given);
    const rate = barRate(bar, flexibility);
    const force = rate * movement;
    const result = barStress(bar, force);
    const stress = result.greatest;
    const place = result.place === "arm" ? "arm, at the bend" : "middle, at the mounting bush";
    const reserve = given.yieldStrength === undefined || stress === 0 ? null : given.yieldStrength / stress;
    const working = () => [
      ...givenSteps(input, given, {
        symbols: {
          ...barSymbols,
          endMovement: "x",
          rollAngle: "φ",
          track: "t",
          motionRatio: "MR",
          yieldStrength: "R_p",
        },
      }),
      ...assumedSteps(given, moduli),
      ...worked([
        [
          "x",
          "Movement of each end",
          "MR · φ · t/2",
          given.endMovement === undefined ? movement : null,
          "length",
          "mm",
        ],
        ["k", "Rate, both ends moving oppositely", "see bar.rate", rate, "rate", "N/mm"],
        ["F", "Force at each end", "k · x", force, "force", "N"],
        ["τ", "Shear in the middle", "F·A·(d/2)/J", result.shear, "pressure", "MPa"],
        ["σ_v", "Middle at the bush", "√(σ² + 3τ²), σ = F·(s+e)·(d/2)/I", result.middle, "pressure", "MPa"],
        ["σ_A", "Arm at the bend", "F·C·(d/2)/I", result.arm, "pressure", "MPa"],
      ]),
    ];
    return {
      outputs: { stress, place, force, reserve, verdict: verdictOf(stress, given.yieldStrength) },
      working,
      warnings: shapeWarnings(given),
    };
  },
});

function movementOf({ endMovement, rollAngle, track, motionRatio }: Input): number {
  if (endMovement !== undefined) {
    if (rollAngle === undefined) return endMovement;
    throw new CalcRefusal(
      "TWO_LOADS",
      "give either the movement of the end or the roll angle, not both",
      "endMovement",
    );
  }
  if (rollAngle !== undefined && track !== undefined && motionRatio !== undefined)
    return (motionRatio * rollAngle * track) / 2;
  throw new CalcRefusal(
    "NO_LOAD",
    "give the movement of the bar's end, or roll angle, track and motion ratio together",
    "endMovement",
  );
}

function verdictOf(stress: number, yieldStrength: number | undefined): string {
  if (yieldStrength === undefined) return "cannot tell: the yield strength of the bar is not known";
  return stress < yieldStrength ? "stays elastic" : "yields: the bar takes a set";
}
