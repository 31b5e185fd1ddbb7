import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { type BallastPlace, cornersWithBallast, frontRollShare, placeForTarget } from "./ballast-corner";
import { cornerSums } from "./corner";
import { cornerFields, cornerSymbols, sumSteps, trackFields, wheelbaseField, wheelRateFields } from "./field";
import { ballastCaution, crossPractice, statics } from "./source";

const wantedShare = (label: string) => quantity("ratio", { label, above: 0, below: 1, unit: "%" });

const input = z.object({
  ...cornerFields,
  wheelbase: wheelbaseField,
  ...trackFields,
  ...wheelRateFields,
  ballast: quantity("mass", { label: "Ballast", above: 0, max: 1000, unit: "kg" }),
  frontShare: wantedShare("Front share wanted"),
  leftShare: wantedShare("Left share wanted").optional(),
  crossShare: wantedShare("Cross weight wanted").optional(),
});
type Input = z.output<typeof input>;
const mass = (label: string) => ({ label, dimension: "mass", unit: "kg", decimals: 1 }) as const;
const share = (label: string) => ({ label, dimension: "ratio", unit: "%", decimals: 2 }) as const;
const place = (label: string) => ({ label, dimension: "length", unit: "mm", decimals: 0 }) as const;
const symbols = {
  ...cornerSymbols,
  wheelbase: "L",
  frontTrack: "t_f",
  rearTrack: "t_r",
  frontWheelRate: "k_f",
  rearWheelRate: "k_r",
  ballast: "m_b",
  frontShare: "φ",
  leftShare: "λ",
  crossShare: "χ",
};

/** Catalogue entry `weight.ballastPlace`. */
export const ballastPlaceComputation = defineComputation({
  name: "weight.ballastPlace",
  title: "Where ballast must go for front, side and cross weight",
  summary:
    "The place of a given ballast for a front share and a left share or a cross weight, and what all four scales then show.",
  input,
  outputs: {
    behind: place("Where, behind the front axle"),
    left: place("Where, left of the centre plane"),
    leftFront: { ...mass("Left front then"), how: ["LF′", "LF with what is moved or added"] },
    rightFront: { ...mass("Right front then"), how: ["RF′", "RF as above"] },
    leftRear: { ...mass("Left rear then"), how: ["LR′", "LR as above"] },
    rightRear: { ...mass("Right rear then"), how: ["RR′", "RR as above"] },
    frontShare: { ...share("Front share then"), how: ["φ′", "LF′ and RF′ over all four"] },
    leftShare: { ...share("Left share then"), how: ["λ′", "LF′ and LR′ over all four"] },
    crossShare: { ...share("Cross weight then"), how: ["x′", "RF′ and LR′ over all four"] },
  },
  source: [statics, crossPractice],
  validity:
    "A rigid chassis on linear springs alike left and right, bars disconnected, ballast as a point. One place answers two shares; the third follows, and is then put right with the spring seats (weight.cross). Refused where a wheel would lift.",
  caution: ballastCaution,
  example: {
    leftFront: "212 kg",
    rightFront: "198 kg",
    leftRear: "224 kg",
    rightRear: "206 kg",
    wheelbase: "2300 mm",
    frontTrack: "1250 mm",
    rearTrack: "1260 mm",
    frontWheelRate: "18 N/mm",
    rearWheelRate: "22 N/mm",
    ballast: "30 kg",
    frontShare: "49 %",
    leftShare: "51 %",
  },
  compute(given) {
    const at = placeForTarget(given, given, given);
    const after = cornersWithBallast(given, { ballast: given.ballast, place: at, plan: given });
    const sums = cornerSums(after);
    const roll = frontRollShare(given);
    const working = () => [
      ...givenSteps(input, given, { symbols }),
      ...sumSteps(given),
      ...worked([
        [
          "κ",
          "Front springs' share of a sideways moment",
          "k_f·t_f²/(k_f·t_f² + k_r·t_r²)",
          roll,
          "ratio",
          "%",
        ],
        ["x", "Behind the front axle", "L·(1 − (φ·(m + m_b) − m_f)/m_b)", at.behind, "length", "mm"],
        ["y", "Left of the centre plane", sidewaysFormula(given), at.left, "length", "mm"],
      ]),
    ];
    const { frontShare, leftShare, crossShare } = sums;
    const outputs = { behind: at.behind, left: at.left, ...after, frontShare, leftShare, crossShare };
    return { outputs, working, warnings: warningsOf(at, given) };
  },
});

function sidewaysFormula({ crossShare }: Input): string {
  return crossShare === undefined
    ? "(λ·(m + m_b) − m_l − m_b/2)/(m_b·(κ/t_f + (1 − κ)/t_r))"
    : "(χ·(m + m_b) − m_x − m_b/2)/(m_b·((1 − κ)/t_r − κ/t_f))";
}

function warningsOf({ behind, left }: BallastPlace, given: Input): string[] {
  const { wheelbase, frontTrack, rearTrack } = given;
  const warnings: string[] = [];
  if (
    behind < -0.4 * wheelbase ||
    behind > 1.4 * wheelbase ||
    Math.abs(left) > Math.max(frontTrack, rearTrack) / 2
  )
    warnings.push("That place lies outside most cars: use more ballast, or move spring seats.");
  return warnings;
}
