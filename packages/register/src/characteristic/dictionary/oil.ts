import type { Characteristic } from "../characteristic";
import { choice, part, removablePart, thread } from "./preset";

const item = { ...part, assembly: "oil" } as const;

/** Oil: sump, cooler, breathers, catch tank, drain plug. */
export const oil: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "wet", label: "Wet sump", also: ["wet", "standard"] },
      { code: "baffled", label: "Wet sump with baffles", also: ["baffled", "baffles"] },
      { code: "dry", label: "Dry sump", also: ["dry"] },
    ),
    key: "oil.sump",
    label: "Oil sump",
    also: ["Sump"],
    help: "How the oil is kept at the pump in corners.",
  },
  {
    ...removablePart,
    assembly: "oil",
    ...choice(
      { code: "front", label: "Ahead of the radiator", also: ["front"] },
      { code: "elsewhere", label: "Elsewhere", also: ["rear", "side"] },
      { code: "placeNotSaid", label: "Fitted, place not said", also: ["fitted", "yes"] },
    ),
    key: "oil.cooler",
    label: "Oil cooler",
    help: "Where an added oil cooler sits. Say not fitted where there is none.",
  },
  {
    ...item,
    ...choice(
      { code: "toIntake", label: "To the intake", also: ["intake", "closed", "PCV"] },
      { code: "toCatchTank", label: "To a catch tank", also: ["catch tank", "catch can"] },
      { code: "toOpenAir", label: "To the open air", also: ["open", "atmosphere", "road draught"] },
    ),
    key: "oil.breather",
    label: "Engine breather",
    also: ["Breather", "Oil breather"],
    help: "Where the crankcase breathes to.",
  },
  {
    ...removablePart,
    assembly: "oil",
    kind: "quantity",
    dimension: "volume",
    units: { metric: "l", imperial: "pint" },
    key: "oil.catchTank",
    label: "Oil catch tank capacity",
    also: ["Catch tank", "Oil catch tank"],
    minimum: 0.0002,
    maximum: 0.01,
    help: "Volume of the tank that takes the breathers. Say not fitted where there is none.",
  },
  {
    ...item,
    ...thread,
    key: "oil.drainPlug.thread",
    label: "Oil drain plug thread",
    also: ["Sump plug thread"],
    help: "Thread of the sump plug.",
  },
];
