import type { WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { worked } from "../spring/worked";
import { type CornerMasses, cornerSums } from "./corner";

const scale = (label: string) => quantity("mass", { label, min: 0, max: 3000, unit: "kg" });

/** The four scales. */
export const cornerFields = {
  leftFront: scale("Left front"),
  rightFront: scale("Right front"),
  leftRear: scale("Left rear"),
  rightRear: scale("Right rear"),
};
export const cornerSymbols = { leftFront: "LF", rightFront: "RF", leftRear: "LR", rightRear: "RR" } as const;

export const wheelbaseField = quantity("length", { label: "Wheelbase", above: 0, max: 6, unit: "mm" });
export const trackFields = {
  frontTrack: quantity("length", { label: "Front track", above: 0, max: 3, unit: "mm" }),
  rearTrack: quantity("length", { label: "Rear track", above: 0, max: 3, unit: "mm" }),
};

const wheelRate = (label: string) =>
  quantity("rate", { label, help: "At the wheel, without bars", above: 0, unit: "N/mm" });
export const wheelRateFields = {
  frontWheelRate: wheelRate("Wheel rate, front"),
  rearWheelRate: wheelRate("Wheel rate, rear"),
};

/** The corner sums as lines of a working. */
export function sumSteps(corners: CornerMasses): WorkingStep[] {
  const sums = cornerSums(corners);
  return worked([
    ["m", "Total", "LF + RF + LR + RR", sums.total, "mass", "kg"],
    ["m_f", "Front", "LF + RF", sums.front, "mass", "kg"],
    ["m_l", "Left", "LF + LR", sums.left, "mass", "kg"],
    ["m_x", "Cross", "RF + LR", sums.cross, "mass", "kg", crossNote],
  ]);
}

const crossNote = "Right front and left rear; some quote the other diagonal, which is what is left of 100 %.";
