import {
  type Adjustment,
  type Corner,
  doubleWishbone,
  semiTrailingArm,
  strut,
  swingAxle,
  type Vector,
  type WheelHardpoints,
} from "@trunnion/calc";
import {
  clampBolt,
  eccentric,
  type OfferedAdjuster,
  screwedEye,
  screwedJoint,
  shims,
  slot,
  threadedRadiusArm,
  toeLink,
  trackRod,
} from "./adjuster";

export type PlanAxle = "front" | "rear";

/** Points by the dictionary's names, m, y outboard. */
export type PlanPoints = Readonly<Record<string, Vector>>;

/** A wheel as it stands, and how its linkage answers to an adjustment of the dictionary's points. */
export type Assemble = (wheel: WheelHardpoints, points: PlanPoints) => (by: Adjustment<string>) => Corner;

/** How one axle's wheels may be guided, where that can be planned with. */
export interface PlannedLayout {
  readonly axle: PlanAxle;
  /** As `front.layout` or `rear.layout` has it. */
  readonly code: string;
  /** Hardpoints, in the dictionary's names. */
  readonly points: readonly string[];
  /** Only a wheel that steers has castor. */
  readonly steers: boolean;
  readonly adjusters: readonly OfferedAdjuster[];
  readonly assemble: Assemble;
}

const lowerArm = ["lowerArmFront", "lowerArmRear", "lowerJoint"] as const;
const upperArm = ["upperArmFront", "upperArmRear", "upperJoint"] as const;
const tieRod = ["tieRodInner", "tieRodOuter"] as const;
const toeLinkPoints = ["toeLinkInner", "toeLinkOuter"] as const;
const wishbonePoints = [...upperArm, ...lowerArm, ...tieRod] as const;
const strutOwn = [...lowerArm, "strutTop", "strutFoot"] as const;
const strutPoints = [...strutOwn, ...tieRod] as const;

/** Where the record says how an axle's arm is adjusted: the front's arms each for itself, the rear as one. */
const armRecord = (axle: PlanAxle, which: "upper" | "lower") =>
  axle === "front" ? `front.${which}Arm.adjustment` : "rear.adjustment";

function armAdjusters(axle: PlanAxle, which: "upper" | "lower"): readonly OfferedAdjuster[] {
  const recorded = armRecord(axle, which);
  const arm = {
    called: `${which} arm pivots`,
    points: [`${which}ArmFront`, `${which}ArmRear`],
    recorded,
  };
  return [
    screwedJoint(which, recorded),
    shims({ ...arm, name: `${which}Shim`, title: `Shims under the ${which} arm's pivots` }),
    eccentric({
      ...arm,
      name: `${which}Cam`,
      title: `Eccentric bolts of the ${which} arm's pivots`,
      called: `${which} arm pivot bolts`,
    }),
  ];
}

const wishbones: PlannedLayout = {
  axle: "front",
  code: "doubleWishbone",
  points: wishbonePoints,
  steers: true,
  adjusters: [...armAdjusters("front", "upper"), ...armAdjusters("front", "lower"), trackRod],
  assemble: (wheel, points) => (by) => doubleWishbone({ ...wheel, ...named(points, wishbonePoints) }, by),
};

/** Rear wheels are held in toe by a link on the chassis: the same linkages, which then do not steer. */
const rearWishbones: PlannedLayout = {
  axle: "rear",
  code: "doubleWishbone",
  points: [...upperArm, ...lowerArm, ...toeLinkPoints],
  steers: false,
  adjusters: [...armAdjusters("rear", "upper"), ...armAdjusters("rear", "lower"), toeLink],
  assemble: (wheel, points) => {
    const own = { ...wheel, ...named(withToeLink(points), wishbonePoints), steers: false };
    return (by) => doubleWishbone(own, by);
  },
};

/** Slots of a strut's top mount across the car, for camber. */
const topAcross = (recorded: string) =>
  slot({
    points: ["strutTop"],
    recorded,
    name: "topAcross",
    title: "Top mount in slots across the car",
    called: "top mount in its cross slots",
    ways: ["inboard", "outboard"],
  });

const struts: PlannedLayout = {
  axle: "front",
  code: "strut",
  points: strutPoints,
  steers: true,
  adjusters: [
    topAcross("front.strut.adjustment"),
    slot({
      points: ["strutTop"],
      recorded: "front.strut.adjustment",
      name: "topAlong",
      title: "Top mount in slots along the car",
      called: "top mount in its long slots",
      ways: ["rearwards", "forwards"],
    }),
    clampBolt("front.strut.adjustment"),
    ...armAdjusters("front", "lower"),
    trackRod,
  ],
  assemble: (wheel, points) => (by) => strut({ ...wheel, ...named(points, strutPoints) }, by),
};

const rearStruts: PlannedLayout = {
  axle: "rear",
  code: "strut",
  points: [...strutOwn, ...toeLinkPoints],
  steers: false,
  adjusters: [
    topAcross("rear.adjustment"),
    clampBolt("rear.adjustment"),
    ...armAdjusters("rear", "lower"),
    toeLink,
  ],
  assemble: (wheel, points) => {
    const own = { ...wheel, ...named(withToeLink(points), strutPoints), steers: false };
    return (by) => strut(own, by);
  },
};

const pivot = (point: string, title: string): readonly OfferedAdjuster[] => {
  const of = { called: title, points: [point], recorded: "rear.adjustment" };
  return [
    shims({ ...of, name: `${point}Shim`, title: `Shims under the ${title}` }),
    eccentric({
      ...of,
      name: `${point}Cam`,
      title: `Eccentric bolt of the ${title}`,
      called: `${title}'s eccentric`,
    }),
    slot({
      ...of,
      name: `${point}Rise`,
      title: `Upright slots at the ${title}`,
      called: `${title} in its upright slots`,
      ways: ["down", "up"],
    }),
    slot({
      ...of,
      name: `${point}Slot`,
      title: `Level slots at the ${title}`,
      called: `${title} in its level slots`,
      ways: ["rearwards", "forwards"],
    }),
  ];
};

/** The calculator has its own names for the points of a trailing arm and a half axle. */
const armOf = ({ armInner, armOuter }: PlanPoints) =>
  named({ pivotInner: armInner ?? nowhere, pivotOuter: armOuter ?? nowhere }, ["pivotInner", "pivotOuter"]);
const halfAxleOf = ({ halfAxleJoint, radiusArm }: PlanPoints) =>
  named({ joint: halfAxleJoint ?? nowhere, radiusArm: radiusArm ?? nowhere }, ["joint", "radiusArm"]);
const withToeLink = ({ toeLinkInner, toeLinkOuter, ...rest }: PlanPoints): PlanPoints => ({
  ...rest,
  tieRodInner: toeLinkInner ?? nowhere,
  tieRodOuter: toeLinkOuter ?? nowhere,
});
const nowhere: Vector = { x: Number.NaN, y: Number.NaN, z: Number.NaN };

const trailing = (code: "semiTrailingArms" | "trailingArms"): PlannedLayout => ({
  axle: "rear",
  code,
  points: ["armInner", "armOuter"],
  steers: false,
  adjusters: [
    ...pivot("armOuter", "trailing arm's outer pivot"),
    screwedEye({
      name: "armOuterEye",
      title: "Screwed eye at the trailing arm's outer pivot",
      called: "trailing arm's outer eye",
      points: ["armOuter"],
      recorded: "rear.adjustment",
    }),
    ...pivot("armInner", "trailing arm's inner pivot"),
    screwedEye({
      name: "armInnerEye",
      title: "Screwed eye at the trailing arm's inner pivot",
      called: "trailing arm's inner eye",
      points: ["armInner"],
      recorded: "rear.adjustment",
    }),
  ],
  assemble: (wheel, points) => (by) =>
    semiTrailingArm(
      { ...wheel, ...armOf(points) },
      renamed(by, {
        armInner: "pivotInner",
        armOuter: "pivotOuter",
        armInnerEye: "pivotInnerEye",
        armOuterEye: "pivotOuterEye",
      }),
    ),
});

const swingAxles: PlannedLayout = {
  axle: "rear",
  code: "swingAxle",
  points: ["halfAxleJoint", "radiusArm"],
  steers: false,
  adjusters: [threadedRadiusArm, ...pivot("radiusArm", "radius arm's chassis pivot")],
  assemble: (wheel, points) => (by) =>
    swingAxle({ ...wheel, ...halfAxleOf(points) }, renamed(by, { halfAxleJoint: "joint" })),
};

/** Every way of guiding wheels that the planner knows. */
export const plannedLayouts: readonly PlannedLayout[] = [
  wishbones,
  struts,
  trailing("semiTrailingArms"),
  trailing("trailingArms"),
  swingAxles,
  rearWishbones,
  rearStruts,
];

/** The points as a record of exactly these names: each is a field that the form has read. */
function named<Name extends string>(points: PlanPoints, names: readonly Name[]): Record<Name, Vector> {
  return Object.fromEntries(names.map((name) => [name, points[name] ?? nowhere])) as Record<Name, Vector>;
}

function renamed<Name extends string>(
  { shift = {}, ...rest }: Adjustment<string>,
  names: Readonly<Record<string, Name>>,
): Adjustment<Name> {
  const moved = Object.entries(shift).map(([name, by]) => [names[name] ?? name, by]);
  return { ...rest, shift: Object.fromEntries(moved) };
}

const made =
  "The axle holds both wheels square to it, so that camber and toe are made with it and cannot be set: a wheel that reads otherwise tells of a bent casing, a worn bearing or a bent stub. Whether the axle stands square in the car is set at its links.";
const noPoints =
  "The dictionary has no pivots for it yet, so there is nothing to work a plan out from. Settings can be recorded and compared all the same.";

/** Why a way of guiding wheels is not planned with, in words. */
export function whyNotPlanned(axle: PlanAxle, code: string): string {
  if (axle === "rear" && ["liveAxleLinks", "liveAxleLeaf", "deadAxle"].includes(code)) return made;
  if (code === "beamAxle")
    return "A beam axle is made with its camber and kingpin inclination; castor is set by wedges under its springs, toe at the track rod. Neither needs the geometry of a linkage, and none is planned here.";
  return noPoints;
}
