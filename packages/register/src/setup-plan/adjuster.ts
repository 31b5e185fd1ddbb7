import type { Adjuster, MeasuredDimension, Vector, WishbonePoint } from "@trunnion/calc";

/** Where a bracket goes when a shim is put under it, as said at the car. */
export const shimDirections = ["inboard", "outboard", "forwards", "rearwards", "up", "down"] as const;
export type ShimDirection = (typeof shimDirections)[number];

const directions: Readonly<Record<ShimDirection, Vector>> = {
  inboard: { x: 0, y: -1, z: 0 },
  outboard: { x: 0, y: 1, z: 0 },
  forwards: { x: 1, y: 0, z: 0 },
  rearwards: { x: -1, y: 0, z: 0 },
  up: { x: 0, y: 0, z: 1 },
  down: { x: 0, y: 0, z: -1 },
};

/** One figure of an adjuster in the form. */
export interface AdjusterField {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
  readonly dimension: MeasuredDimension;
  readonly unit: string;
}

/** An adjuster that the form offers; it takes part where any of its figures is filled in. */
export interface OfferedAdjuster {
  readonly name: string;
  readonly title: string;
  readonly hint: string;
  readonly fields: readonly AdjusterField[];
  /** Asks for the direction of a shim too. */
  readonly directed?: true;
  readonly make: (figures: Readonly<Record<string, number>>, given: Given) => Adjuster<WishbonePoint>;
}

/** What an adjuster is made from besides its own figures. */
export interface Given {
  readonly points: Readonly<Record<WishbonePoint, Vector>>;
  readonly direction: ShimDirection;
}

const count = (name: string, label: string, hint: string): AdjusterField => ({
  name,
  label,
  hint,
  dimension: "count",
  unit: "",
});
const length = (name: string, label: string, hint: string): AdjusterField => ({
  name,
  label,
  hint,
  dimension: "length",
  unit: "mm",
});

const threadFields = (prefix: string): readonly AdjusterField[] => [
  length(
    `${prefix}-pitch`,
    "Movement per turn",
    "One pitch, measured: 1.5 mm, 1/16 in. Both together where the ends are handed",
  ),
  count(
    `${prefix}-step`,
    "Least that can be set, turns",
    "1/2 where flats or a grease nipple must come round",
  ),
  count(`${prefix}-in`, "Turns allowed shorter, or inboard", "From where it stands"),
  count(
    `${prefix}-out`,
    "Turns allowed longer, or outboard",
    "As far as its thread stays engaged as the manual asks",
  ),
];

const figure = (figures: Readonly<Record<string, number>>, name: string) => figures[name] ?? Number.NaN;

const thread = (prefix: string, figures: Readonly<Record<string, number>>) => ({
  pitch: figure(figures, `${prefix}-pitch`),
  step: figure(figures, `${prefix}-step`),
  lowest: 0 - figure(figures, `${prefix}-in`),
  highest: figure(figures, `${prefix}-out`),
});

/** From the middle of an arm's pivots to its joint: the line its screwed joint moves along. */
function along(front: Vector, rear: Vector, joint: Vector): Vector {
  return {
    x: joint.x - (front.x + rear.x) / 2,
    y: joint.y - (front.y + rear.y) / 2,
    z: joint.z - (front.z + rear.z) / 2,
  };
}

function screwed(arm: "upper" | "lower"): OfferedAdjuster {
  const prefix = `${arm}Joint`;
  return {
    name: prefix,
    title: `Screwed outer joint of the ${arm} arm`,
    hint: "Taken to move along the line from the middle of the arm's pivots to the joint.",
    fields: threadFields(prefix),
    make: (figures, { points }) => ({
      kind: "screwedJoint",
      name: `${arm} ball joint`,
      point: `${arm}Joint`,
      axis: along(points[`${arm}ArmFront`], points[`${arm}ArmRear`], points[`${arm}Joint`]),
      ...thread(prefix, figures),
    }),
  };
}

function shims(arm: "upper" | "lower"): OfferedAdjuster {
  const prefix = `${arm}Shim`;
  return {
    name: prefix,
    title: `Shims under the ${arm} arm's pivots`,
    hint: "The same number at both pivots.",
    directed: true,
    fields: [
      length(`${prefix}-thickness`, "Thickness of one shim", "Measured: 1.6 mm, 1/16 in"),
      count(`${prefix}-fitted`, "Fitted now", "How many"),
      count(`${prefix}-most`, "Most there is room for", "As far as the bolt's thread stays engaged"),
    ],
    make: (figures, { direction }) => ({
      kind: "shims",
      name: `${arm} arm pivots`,
      points: [`${arm}ArmFront`, `${arm}ArmRear`],
      axis: directions[direction],
      thickness: figure(figures, `${prefix}-thickness`),
      fitted: figure(figures, `${prefix}-fitted`),
      most: figure(figures, `${prefix}-most`),
    }),
  };
}

/** The adjusters that a double wishbone corner may have; what a car has is said by filling them in. */
export const offeredAdjusters: readonly OfferedAdjuster[] = [
  screwed("upper"),
  shims("upper"),
  screwed("lower"),
  shims("lower"),
  {
    name: "tieRod",
    title: "Track rod end",
    hint: "Turns are of the sleeve or the rod; the wheel's toe follows.",
    fields: threadFields("tieRod"),
    make: (figures) => ({ kind: "tieRod", name: "track rod end", ...thread("tieRod", figures) }),
  },
];
