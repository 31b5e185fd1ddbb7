import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { standardGravity } from "../quantity/unit-table/unit";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { type CornerMasses, cornerNames, cornerSums } from "./corner";
import { seatLiftForCross, seatLiftLoads } from "./cross";
import { cornerFields, cornerSymbols, sumSteps, trackFields, wheelRateFields } from "./field";
import { crossPractice, statics } from "./source";

const input = z.object({
  ...cornerFields,
  ...trackFields,
  ...wheelRateFields,
  crossShare: quantity("ratio", { label: "Cross weight wanted", above: 0, below: 1, unit: "%" }),
  corner: z.enum(cornerNames).meta({ title: "Corner that is adjusted" }),
  motionRatio: quantity("ratio", {
    label: "Motion ratio there",
    help: "Spring movement over wheel movement",
    above: 0,
    max: 2,
  }),
  pitch: quantity("length", {
    label: "Seat movement per turn",
    help: "Pitch of the spring seat's thread; left out, turns are not given",
    above: 0,
    max: 0.01,
    unit: "mm",
  }).optional(),
});

export const crossWeightComputation = defineComputation({
  name: "weight.cross",
  title: "Spring seat for a cross weight",
  summary:
    "How far one spring seat is moved to reach a cross weight, in turns where the thread is known, and what the scales then show.",
  input,
  outputs: {
    seatMovement: {
      how: ["s", "Δ·MR"],
      label: "Spring seat, up against the spring",
      dimension: "length",
      unit: "mm",
      decimals: 1,
    },
    turns: { label: "Turns of the seat", dimension: "ratio" },
    leftFront: {
      how: ["LF′", "left front with what is moved or added"],
      label: "Left front then",
      dimension: "mass",
      unit: "kg",
      decimals: 1,
    },
    rightFront: {
      how: ["RF′", "as above, right front"],
      label: "Right front then",
      dimension: "mass",
      unit: "kg",
      decimals: 1,
    },
    leftRear: {
      how: ["LR′", "as above, left rear"],
      label: "Left rear then",
      dimension: "mass",
      unit: "kg",
      decimals: 1,
    },
    rightRear: {
      how: ["RR′", "as above, right rear"],
      label: "Right rear then",
      dimension: "mass",
      unit: "kg",
      decimals: 1,
    },
    crossShare: {
      how: ["x′", "right front and left rear over all then"],
      label: "Cross weight then",
      dimension: "ratio",
      unit: "%",
      decimals: 2,
    },
  },
  source: [statics, crossPractice],
  validity:
    "A rigid chassis on linear springs, bars disconnected, friction settled by rolling the car. Ride height at that corner changes; spread the movement over all four to keep it.",
  example: {
    leftFront: "240 kg",
    rightFront: "226 kg",
    leftRear: "252 kg",
    rightRear: "262 kg",
    frontTrack: "1250 mm",
    rearTrack: "1260 mm",
    frontWheelRate: "18 N/mm",
    rearWheelRate: "20 N/mm",
    crossShare: "50 %",
    corner: "leftRear",
    motionRatio: 0.9,
    pitch: "2 mm",
  },
  compute(given) {
    const { corner, motionRatio, pitch, frontTrack, rearTrack, frontWheelRate, rearWheelRate } = given;
    const wheelRates = {
      leftFront: frontWheelRate,
      rightFront: frontWheelRate,
      leftRear: rearWheelRate,
      rightRear: rearWheelRate,
    };
    const car = { wheelRates, frontTrack, rearTrack };
    const lift = seatLiftForCross(car, given, given);
    const after = moved(given, seatLiftLoads(car, corner, lift));
    const seatMovement = lift * motionRatio;
    const turns = pitch === undefined ? null : seatMovement / pitch;
    const present = cornerSums(given).crossShare;
    const working = () => [
      ...givenSteps(input, given, { symbols: { ...cornerSymbols, ...symbols } }),
      ...sumSteps(given),
      ...worked([
        ["x₀", "Cross weight now", "(RF + LR)/m", present, "ratio", "%"],
        ["Δ", "Lift at the wheel", "warp that moves the loads, ΔF_f·t_f = ΔF_r·t_r", lift, "length", "mm"],
        ["s", "Seat movement", "Δ·MR", seatMovement, "length", "mm"],
        ["n", "Turns", "s/P", turns, "ratio"],
      ]),
    ];
    const outputs = { seatMovement, turns, ...after, crossShare: cornerSums(after).crossShare };
    return { outputs, working, warnings: [] };
  },
});

const symbols = {
  frontTrack: "t_f",
  rearTrack: "t_r",
  frontWheelRate: "k_f",
  rearWheelRate: "k_r",
  crossShare: "x",
  motionRatio: "MR",
  pitch: "P",
};

function moved(corners: CornerMasses, loads: CornerMasses): CornerMasses {
  const at = (name: keyof CornerMasses) => corners[name] + loads[name] / standardGravity;
  return {
    leftFront: at("leftFront"),
    rightFront: at("rightFront"),
    leftRear: at("leftRear"),
    rightRear: at("rightRear"),
  };
}
