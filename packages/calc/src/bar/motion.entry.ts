import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { leverMotionRatio } from "./rate";

const input = z.object({
  leverLength: quantity("length", {
    label: "Suspension arm, inner pivot to outer joint",
    above: 0,
    max: 2,
    unit: "mm",
  }),
  fromOuterJoint: quantity("length", {
    label: "Pick-up to outer joint",
    help: "Along the arm",
    min: 0,
    max: 2,
    unit: "mm",
  }),
});

export const barMotionRatioComputation = defineComputation({
  name: "bar.motionRatio",
  title: "Motion ratio from lever lengths",
  summary:
    "How far a link or spring picked up part of the way along a suspension arm moves for each movement of the wheel.",
  input,
  outputs: { motionRatio: { label: "Motion ratio", dimension: "ratio", decimals: 4 } },
  source: [
    {
      title: "Magazine article on rating anti-roll bars by measurement, April 2010",
      locus: "steps 12-13",
      status: "read",
    },
  ],
  validity:
    "A single arm swinging about its inner pivot, with link or spring square to it. The linkage computations give the exact ratio from hardpoints.",
  example: { leverLength: "19 in", fromOuterJoint: "3 in" },
  compute(given) {
    const motionRatio = leverMotionRatio(given.leverLength, given.fromOuterJoint);
    const working = () => [
      ...givenSteps(input, given, { symbols: { leverLength: "L", fromOuterJoint: "p" } }),
      ...worked([["MR", "Motion ratio", "(L − p)/L", motionRatio, "ratio"]]),
    ];
    return { outputs: { motionRatio }, working, warnings: [] };
  },
});
