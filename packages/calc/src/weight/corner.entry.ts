import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { cornerSums, unwarpedCorners } from "./corner";
import { cornerFields, cornerSymbols, sumSteps } from "./field";
import { cornerArticle, crossPractice } from "./source";

const input = z.object(cornerFields);
const mass = (label: string) => ({ label, dimension: "mass", unit: "kg", decimals: 1 }) as const;
const share = (label: string) => ({ label, dimension: "ratio", unit: "%", decimals: 2 }) as const;

export const cornerWeightComputation = defineComputation({
  name: "weight.corner",
  title: "Corner weights",
  summary:
    "Total, axle, side and cross weight from four scales, and the corner weights the car would have without warp.",
  input,
  outputs: {
    total: mass("Total"),
    front: mass("Front"),
    rear: { ...mass("Rear"), how: ["m_r", "LR + RR"] },
    left: mass("Left"),
    right: { ...mass("Right"), how: ["m_R", "RF + RR"] },
    frontShare: { ...share("Front share"), how: ["φ_f", "m_f/m"] },
    leftShare: { ...share("Left share"), how: ["φ_l", "m_l/m"] },
    crossShare: share("Cross weight"),
    cross: mass("Right front and left rear"),
    otherCross: { ...mass("Left front and right rear"), how: ["m_x′", "LF + RR"] },
    unwarpedLeftFront: mass("Left front without warp"),
    unwarpedRightFront: {
      ...mass("Right front without warp"),
      how: ["RF₀", "the front's share of the right side, as LF₀"],
    },
    unwarpedLeftRear: {
      ...mass("Left rear without warp"),
      how: ["LR₀", "the rear's share of the left side, as LF₀"],
    },
    unwarpedRightRear: {
      ...mass("Right rear without warp"),
      how: ["RR₀", "the rear's share of the right side, as LF₀"],
    },
  },
  source: [cornerArticle, crossPractice],
  validity:
    "Four level scales, tyres at their pressures, bars disconnected, dampers slack, the driver's weight in his seat if he is meant to count.",
  example: { leftFront: "694 lb", rightFront: "606 lb", leftRear: "670 lb", rightRear: "585 lb" },
  compute(given) {
    const { total, front, rear, left, right, frontShare, leftShare, crossShare, cross, otherCross } =
      cornerSums(given);
    const unwarped = unwarpedCorners(given);
    const working = () => [
      ...givenSteps(input, given, { symbols: cornerSymbols }),
      ...sumSteps(given),
      ...worked([
        ["x", "Cross weight", "(RF + LR)/m", crossShare, "ratio", "%"],
        [
          "LF₀",
          "Left front without warp",
          "m_f·m_l/m",
          unwarped.leftFront,
          "mass",
          "kg",
          "Each axle shared as the whole car is.",
        ],
      ]),
    ];
    const outputs = {
      ...{ total, front, rear, left, right, frontShare, leftShare, crossShare, cross, otherCross },
      unwarpedLeftFront: unwarped.leftFront,
      unwarpedRightFront: unwarped.rightFront,
      unwarpedLeftRear: unwarped.leftRear,
      unwarpedRightRear: unwarped.rightRear,
    };
    return { outputs, working, warnings: [] };
  },
});
