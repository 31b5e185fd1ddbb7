import type { Characteristic } from "../characteristic";
import { adjustments, bushes, choice, outerJoints, part, text } from "./preset";
import { antiRollBarOf, springingOf } from "./suspension";

const item = { ...part, assembly: "frontSuspension" } as const;

function armOf(which: "upper" | "lower"): readonly Characteristic[] {
  return [
    {
      ...item,
      ...text,
      key: `front.${which}Arm.source`,
      label: `Front ${which} arm`,
      also: [`Front ${which} arm source`, `Front ${which} wishbone`, `Front ${which} link`],
      help: "Where the arm comes from: the works' own, or the donor and its part number. Say what was altered.",
    },
    {
      ...item,
      ...bushes,
      key: `front.${which}Arm.bush`,
      label: `Front ${which} arm bush`,
      also: [`Front ${which} wishbone bush`],
      help: "What the arm turns in at the chassis.",
    },
    {
      ...item,
      ...outerJoints,
      key: `front.${which}Arm.joint`,
      label: `Front ${which} arm outer joint`,
      also: [`Front ${which} ball joint`],
      help: "What joins the arm to the upright.",
    },
    {
      ...item,
      ...adjustments,
      key: `front.${which}Arm.adjustment`,
      label: `Front ${which} arm adjustment`,
      help: "How the arm is made longer, shorter or moved to set camber and castor.",
    },
  ];
}

/** Front suspension: layout, arms, upright, anti-roll bar, drop links, springs, dampers. */
export const frontSuspension: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      {
        code: "doubleWishbone",
        label: "Double wishbones",
        also: ["wishbones", "double wishbone", "unequal wishbones"],
      },
      { code: "strut", label: "Strut", also: ["struts", "strut and track control arm"] },
      { code: "slidingPillar", label: "Sliding pillar", also: ["pillar"] },
      { code: "trailingArms", label: "Trailing arms", also: ["trailing arm"] },
      { code: "beamAxle", label: "Beam axle", also: ["beam", "solid axle"] },
    ),
    key: "front.layout",
    label: "Front suspension layout",
    also: ["Front suspension"],
    help: "How the front wheels are guided.",
  },
  ...armOf("upper"),
  ...armOf("lower"),
  {
    ...item,
    ...adjustments,
    key: "front.strut.adjustment",
    label: "Front strut adjustment",
    help: "How the strut is set for camber and castor: its top mount in slots, an eccentric bolt where it is clamped to the upright.",
  },
  {
    ...item,
    ...text,
    key: "front.upright.source",
    label: "Front upright",
    also: ["Front upright source", "Front stub axle carrier"],
    help: "Where the upright and stub axle come from: donor and part number. Say what was altered.",
  },
  ...antiRollBarOf("front"),
  ...springingOf("front"),
];
