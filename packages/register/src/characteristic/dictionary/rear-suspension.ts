import type { Characteristic } from "../characteristic";
import { adjustments, bushes, choice, part, text } from "./preset";
import { antiRollBarOf, springingOf } from "./suspension";

const item = { ...part, assembly: "rearSuspension" } as const;

function linkOf(which: "upper" | "lower"): readonly Characteristic[] {
  return [
    {
      ...item,
      ...text,
      key: `rear.${which}Link.source`,
      label: `Rear ${which} link`,
      also: [`Rear ${which} link source`, `Rear ${which} arm`],
      help: "Where the link or arm comes from: the works' own, or the donor and its part number. Say what was altered.",
    },
    {
      ...item,
      ...bushes,
      key: `rear.${which}Link.bush`,
      label: `Rear ${which} link bush`,
      also: [`Rear ${which} arm bush`],
      help: "What the link turns in at the chassis end.",
    },
  ];
}

/** Rear suspension: layout, axle, links, location, anti-roll bar, drop links, springs, dampers. */
export const rearSuspension: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      {
        code: "liveAxleLinks",
        label: "Live axle on links",
        also: ["live axle", "four link", "live axle, four links"],
      },
      { code: "liveAxleLeaf", label: "Live axle on leaf springs", also: ["leaf sprung live axle"] },
      { code: "deadAxle", label: "Dead axle, final drive on the chassis", also: ["dead axle"] },
      { code: "swingAxle", label: "Swing axle", also: ["swing axles"] },
      { code: "semiTrailingArms", label: "Semi-trailing arms", also: ["semi trailing arm", "semi-trailing"] },
      { code: "trailingArms", label: "Trailing arms", also: ["trailing arm"] },
      { code: "doubleWishbone", label: "Double wishbones", also: ["wishbones", "double wishbone"] },
      { code: "strut", label: "Strut", also: ["struts", "rear strut"] },
    ),
    key: "rear.layout",
    label: "Rear suspension layout",
    also: ["Rear suspension"],
    help: "How the rear wheels are guided.",
  },
  {
    ...item,
    ...text,
    key: "rear.axle.source",
    label: "Rear axle",
    also: ["Rear axle source", "Back axle"],
    help: "Where the axle or hub carriers come from: donor and part number. Say what was altered.",
  },
  ...linkOf("upper"),
  ...linkOf("lower"),
  {
    ...item,
    ...choice(
      { code: "links", label: "By the links alone", also: ["links", "angled links"] },
      { code: "transverseRod", label: "Transverse rod", also: ["track rod", "transverse link"] },
      {
        code: "centrePivotLinkage",
        label: "Centre-pivot linkage",
        also: ["centre pivot", "two rods and bell crank"],
      },
      { code: "aBracket", label: "A-bracket", also: ["a frame", "a-frame"] },
      { code: "leafSprings", label: "By the leaf springs", also: ["leaf springs"] },
    ),
    key: "rear.lateralLocation",
    label: "Rear axle lateral location",
    help: "What holds the axle sideways.",
  },
  {
    ...item,
    ...choice(
      { code: "universal", label: "Universal joints", also: ["universal joint", "UJ", "UJs", "hooke joint"] },
      { code: "constantVelocity", label: "Constant-velocity joints", also: ["CV", "CV joint", "CV joints"] },
      {
        code: "rubberCoupling",
        label: "Rubber couplings",
        also: ["rubber coupling", "doughnut", "doughnuts"],
      },
      {
        code: "sliding",
        label: "Universal joints and sliding spline",
        also: ["sliding spline", "splined shaft"],
      },
      { code: "inAxle", label: "None, shaft inside a live axle", also: ["live axle shaft"] },
    ),
    key: "rear.halfShaft.joint",
    label: "Rear half-shaft joint",
    also: ["Half-shaft joint", "Drive shaft joint"],
    help: "What lets the half-shafts move with the wheels.",
  },
  {
    ...item,
    ...adjustments,
    key: "rear.adjustment",
    label: "Rear camber and toe adjustment",
    help: "How the camber and toe of the rear wheels are set.",
  },
  ...antiRollBarOf("rear"),
  ...springingOf("rear"),
];
