import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { threadField } from "./field";
import { type BoltFit, boltFit, leastBoltLength, nominalLength, usualThreadLength } from "./length";
import { boltCaution, boltLengths, workshop } from "./source";

const part = (label: string, help: string) =>
  quantity("length", { label, help, min: 0, max: 0.3, unit: "mm" });
const input = z.object({
  thread: threadField(),
  parts: z
    .array(quantity("length", { label: "Thickness", above: 0, max: 0.3, unit: "mm" }))
    .min(1)
    .max(20)
    .meta({
      title: "Everything clamped",
      description: "Bracket, link, spacers and washers, one by one, from the head.",
    }),
  nutHeight: quantity("length", {
    label: "Height of the nut",
    help: "Plain about 0.8 d, self-locking about 1 d",
    above: 0,
    max: 0.1,
    unit: "mm",
  }),
  shearPlane: part("Head to the face that is in shear", "From under the head, with its washer").optional(),
  length: quantity("length", {
    label: "Length of the bolt at hand",
    help: "Under the head; left out, the next nominal length is taken",
    above: 0,
    max: 0.4,
    unit: "mm",
  }).optional(),
  threadLength: quantity("length", {
    label: "Length of its thread",
    help: "Left out, the usual one for that length",
    above: 0,
    max: 0.4,
    unit: "mm",
  }).optional(),
});

export const boltLengthComputation = defineComputation({
  name: "fastener.length",
  title: "Grip and length of a bolt",
  summary:
    "The bolt length a stack of parts needs, and whether thread, shank and nut of a bolt fall in the right places.",
  input,
  outputs: {
    grip: { label: "Grip", dimension: "length", unit: "mm" },
    leastLength: { label: "Least length", dimension: "length", unit: "mm" },
    length: { label: "Length judged", dimension: "length", unit: "mm" },
    shankLength: { label: "Plain shank", dimension: "length", unit: "mm" },
    threadsOut: { label: "Threads standing out of the nut", dimension: "ratio" },
    shearPlane: {
      how: ["plane", "s against the plain shank"],
      label: "In the plane of shear",
      dimension: "text",
    },
    verdict: {
      how: ["verdict", "length, thread out of the nut and thread left under it against the least"],
      label: "Verdict",
      dimension: "text",
    },
  },
  source: [boltLengths, workshop],
  validity:
    "Hexagon bolts of the usual proportions. Measure the thread of the bolt in hand where it matters.",
  caution: boltCaution,
  example: {
    thread: "M10x1.5",
    parts: ["2 mm", "6 mm", "20 mm", "14 mm", "2 mm"],
    nutHeight: "10 mm",
    shearPlane: "8 mm",
  },
  compute(given) {
    const { thread, nutHeight } = given;
    const series = thread.system === "metric" || thread.system === "BA" ? "metric" : "inch";
    const grip = given.parts.reduce((sum, thickness) => sum + thickness, 0);
    const stackUp = { grip, nutHeight, pitch: thread.pitch };
    const leastLength = leastBoltLength(stackUp);
    const length = given.length ?? nominalLength(leastLength, series);
    const threadLength = given.threadLength ?? usualThreadLength(thread.majorDiameter, length, series);
    const fit = boltFit(stackUp, { length, threadLength, shearPlane: given.shearPlane });
    const taken = (value: number | undefined, what: string) =>
      value === undefined ? `taken: ${what}` : "given";
    const working = () => [
      { symbol: "thread", label: "Thread", value: thread.canonical },
      ...givenSteps(input, given, { symbols: { nutHeight: "m", shearPlane: "s" } }),
      ...worked([
        ["g", "Grip", "Σ of the parts", grip, "length", "mm"],
        ["l_min", "Least length", "g + m + 2·P", leastLength, "length", "mm"],
        ["l", "Length judged", taken(given.length, "next nominal length"), length, "length", "mm"],
        [
          "b",
          "Length of thread",
          taken(given.threadLength, "ISO 888 or ASME B18.2.1"),
          threadLength,
          "length",
          "mm",
        ],
        ["l_s", "Plain shank", "l − b", fit.shankLength, "length", "mm"],
        ["n", "Threads out of the nut", "(l − g − m)/P", fit.threadsOut, "ratio"],
        ["u", "Thread left under the nut", "g − l_s", fit.threadUnderNut, "length", "mm"],
      ]),
    ];
    const { shankLength, threadsOut, shearPlane } = fit;
    const outputs = {
      grip,
      leastLength,
      length,
      shankLength,
      threadsOut,
      shearPlane,
      verdict: verdictOf(fit, thread.pitch),
    };
    return { outputs, working, warnings: warningsOf(fit) };
  },
});

function verdictOf({ threadsOut, threadUnderNut }: BoltFit, pitch: number): string {
  if (threadsOut < 0) return "too short: the nut is not full";
  if (threadsOut < 1) return "too short: not one thread stands out of the nut";
  if (threadUnderNut < pitch)
    return "the nut runs on to the shank before it clamps: a washer, or a shorter shank";
  return "fits";
}

function warningsOf({ shearPlane, threadsOut }: BoltFit): string[] {
  const warnings: string[] = [];
  if (shearPlane === "thread")
    warnings.push("The thread lies in the plane of shear: a longer shank there is stronger.");
  if (threadsOut > 6) warnings.push("More than six threads stand out: see that nothing fouls them.");
  return warnings;
}
