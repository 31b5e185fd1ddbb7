import type { Adjuster, MeasuredDimension, Vector } from "@trunnion/calc";

/** Where a pivot goes when a shim is put in or a mark is passed, as said at the car. */
export const moveDirections = ["inboard", "outboard", "forwards", "rearwards", "up", "down"] as const;
export type MoveDirection = (typeof moveDirections)[number];

const directions: Readonly<Record<MoveDirection, Vector>> = {
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

/** Where the record says whether a car has an adjuster: a choice, and the code it then has. */
export interface RecordedAs {
  readonly key: string;
  readonly code: "shims" | "screw" | "eccentric" | "slots";
}

/** What an adjuster is made from besides its own figures; points by the dictionary's names, m, y outboard. */
export interface Given {
  readonly points: Readonly<Record<string, Vector>>;
  readonly direction: MoveDirection;
}

/** An adjuster that the form offers; it takes part where any of its figures is filled in. */
export interface OfferedAdjuster {
  readonly name: string;
  readonly title: string;
  readonly hint: string;
  readonly fields: readonly AdjusterField[];
  /** Asks for a direction too, and how. */
  readonly directed?: string;
  readonly recorded?: RecordedAs;
  readonly make: (figures: Readonly<Record<string, number>>, given: Given) => Adjuster<string>;
}

/** What tells one offered adjuster from another of its kind. */
interface Offer {
  readonly name: string;
  readonly title: string;
  /** As the plan calls it: "upper arm pivots". */
  readonly called: string;
  /** The hardpoints it moves, in the dictionary's names. */
  readonly points: readonly string[];
  readonly recorded?: string;
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
const angle = (name: string, label: string, hint: string): AdjusterField => ({
  name,
  label,
  hint,
  dimension: "angle",
  unit: "°",
});

const figure = (figures: Readonly<Record<string, number>>, name: string) => figures[name] ?? Number.NaN;
const recordedAs = (key: string | undefined, code: RecordedAs["code"]) =>
  key === undefined ? {} : { recorded: { key, code } };

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

const thread = (prefix: string, figures: Readonly<Record<string, number>>) => ({
  pitch: figure(figures, `${prefix}-pitch`),
  step: figure(figures, `${prefix}-step`),
  lowest: 0 - figure(figures, `${prefix}-in`),
  highest: figure(figures, `${prefix}-out`),
});

const origin: Vector = { x: 0, y: 0, z: 0 };

/** From the middle of an arm's pivots to its joint: the line its screwed joint moves along. */
function along(front: Vector, rear: Vector, joint: Vector): Vector {
  return {
    x: joint.x - (front.x + rear.x) / 2,
    y: joint.y - (front.y + rear.y) / 2,
    z: joint.z - (front.z + rear.z) / 2,
  };
}

/** The outer joint of an arm, screwed in or out. `recorded` is where the record says how the arm is adjusted. */
export function screwedJoint(arm: "upper" | "lower", recorded: string): OfferedAdjuster {
  const prefix = `${arm}Joint`;
  return {
    name: prefix,
    title: `Screwed outer joint of the ${arm} arm`,
    hint: "Taken to move along the line from the middle of the arm's pivots to the joint.",
    fields: threadFields(prefix),
    ...recordedAs(recorded, "screw"),
    make: (figures, { points }) => ({
      kind: "screwedJoint",
      name: `${arm} ball joint`,
      point: `${arm}Joint`,
      axis: along(
        points[`${arm}ArmFront`] ?? origin,
        points[`${arm}ArmRear`] ?? origin,
        points[`${arm}Joint`] ?? origin,
      ),
      ...thread(prefix, figures),
    }),
  };
}

/** The end of an arm that sits on a chassis pivot, on a thread in the arm's leg; the form asks which way the leg points. */
export function screwedEye({ name, title, called, points: [point = ""], recorded }: Offer): OfferedAdjuster {
  return {
    name,
    title,
    hint: "The eye on the pivot stands on a thread in the arm; the pivot itself stays where it is on the chassis.",
    directed: "Screwed out of the arm, the eye moves",
    fields: [
      ...threadFields(name).slice(0, 2),
      count(`${name}-in`, "Turns it can still be screwed into the arm", "From where it stands"),
      count(
        `${name}-out`,
        "Turns it can still be screwed out",
        "As far as its thread stays engaged as the manual asks",
      ),
    ],
    ...recordedAs(recorded, "screw"),
    make: (figures, { direction }) => ({
      kind: "screwedJoint",
      name: called,
      point: `${point}Eye`,
      axis: directions[direction],
      ...thread(name, figures),
    }),
  };
}

/** A swing axle's radius arm with a thread in it: longer or shorter along its own line, which its far end gives. */
export const threadedRadiusArm: OfferedAdjuster = {
  name: "radiusArmThread",
  title: "Thread of the radius arm",
  hint: "Makes the arm longer or shorter along its own line, from where it is bolted to the axle to its pivot on the chassis.",
  fields: [
    length(
      "radiusArmThread-x",
      "Its bolt at the axle, forward of the axle",
      "Negative behind it; measured at ride height",
    ),
    length("radiusArmThread-y", "Its bolt at the axle, out from the car's middle", "Measured at ride height"),
    length("radiusArmThread-z", "Its bolt at the axle, above the ground", "Measured at ride height"),
    ...threadFields("radiusArmThread").slice(0, 2),
    count("radiusArmThread-in", "Turns allowed shorter", "From where it stands"),
    count(
      "radiusArmThread-out",
      "Turns allowed longer",
      "As far as its thread stays engaged as the manual asks",
    ),
  ],
  recorded: { key: "rear.adjustment", code: "screw" },
  make: (figures, { points }) => {
    const { x, y, z } = points.radiusArm ?? origin;
    return {
      kind: "screwedJoint",
      name: "radius arm's front end",
      point: "radiusArmEye",
      axis: {
        x: x - figure(figures, "radiusArmThread-x"),
        y: y - figure(figures, "radiusArmThread-y"),
        z: z - figure(figures, "radiusArmThread-z"),
      },
      ...thread("radiusArmThread", figures),
    };
  },
};

/** Shims under the bracket of one pivot, or the same number under two. */
export function shims({ name, title, called, points, recorded }: Offer): OfferedAdjuster {
  return {
    name,
    title,
    hint: points.length > 1 ? "The same number at both pivots." : "Under this pivot alone.",
    directed: "A shim moves it",
    fields: [
      length(`${name}-thickness`, "Thickness of one shim", "Measured: 1.6 mm, 1/16 in"),
      count(`${name}-fitted`, "Fitted now", "How many"),
      count(`${name}-most`, "Most there is room for", "As far as the bolt's thread stays engaged"),
    ],
    ...recordedAs(recorded, "shims"),
    make: (figures, { direction }) => ({
      kind: "shims",
      name: called,
      points,
      axis: directions[direction],
      thickness: figure(figures, `${name}-thickness`),
      fitted: figure(figures, `${name}-fitted`),
      most: figure(figures, `${name}-most`),
    }),
  };
}

const turnedFields = (name: string): readonly AdjusterField[] => [
  length(`${name}-eccentricity`, "Eccentricity", "Centre of the bolt to centre of its cam, measured"),
  angle(
    `${name}-setting`,
    "Where its mark stands now",
    "From the middle of its range, 90° at most; negative the other way",
  ),
  angle(`${name}-mark`, "Least that can be set", "From one mark to the next, or what can be held: 15°"),
];

const turned = (name: string, figures: Readonly<Record<string, number>>) => ({
  eccentricity: figure(figures, `${name}-eccentricity`),
  setting: figure(figures, `${name}-setting`),
  step: figure(figures, `${name}-mark`),
});

/** A pivot's bolt with a cam against a plate: its pivot moves to and fro along one line. */
export function eccentric({ name, title, called, points, recorded }: Offer): OfferedAdjuster {
  return {
    name,
    title,
    hint: "Its cam runs between two flanges, so that the pivot moves to and fro along one line.",
    directed: "Passing the middle it moves",
    fields: turnedFields(name),
    ...recordedAs(recorded, "eccentric"),
    make: (figures, { direction }) => ({
      kind: "eccentric",
      name: called,
      points,
      axis: directions[direction],
      ...turned(name, figures),
    }),
  };
}

interface SlotOffer extends Offer {
  readonly ways: readonly [back: MoveDirection, forth: MoveDirection];
}

/** Bolts in slots that run one way and the other. */
export function slot({ name, title, called, points, recorded, ways }: SlotOffer): OfferedAdjuster {
  const [back, forth] = ways;
  return {
    name,
    title,
    hint: "With its bolts slack it slides; what a rule shows is what can be set.",
    fields: [
      length(`${name}-mark`, "Least that can be set", "What a rule shows: 0.5 mm, 1/32 in"),
      length(`${name}-back`, `Room left ${back}`, "From where it stands; 0 at the end of the slot"),
      length(`${name}-forth`, `Room left ${forth}`, "From where it stands; 0 at the end of the slot"),
    ],
    ...recordedAs(recorded, "slots"),
    make: (figures) => ({
      kind: "slot",
      name: called,
      points,
      axis: directions[forth],
      step: figure(figures, `${name}-mark`),
      lowest: 0 - figure(figures, `${name}-back`),
      highest: figure(figures, `${name}-forth`),
    }),
  };
}

/** An eccentric bolt in the clamp of strut and upright. It leans square to the car's length, so that no x is needed. */
export const clampBolt = (recorded: string): OfferedAdjuster => ({
  name: "clamp",
  title: "Eccentric bolt in the strut's clamp",
  hint: "Of the clamp's two bolts this one has a cam; the upright turns about the other, both bolts taken to lie fore and aft.",
  directed: "Passing the middle it moves the upright there",
  fields: [
    length("clamp-boltY", "Eccentric bolt, out from the car's middle", "Measured at ride height"),
    length("clamp-boltZ", "Eccentric bolt, above the ground", "Measured at ride height"),
    length("clamp-pivotY", "The other bolt, out from the car's middle", "Measured at ride height"),
    length("clamp-pivotZ", "The other bolt, above the ground", "Measured at ride height"),
    ...turnedFields("clamp"),
  ],
  ...recordedAs(recorded, "eccentric"),
  make: (figures, { direction }) => ({
    kind: "camberBolt",
    name: "eccentric clamp bolt",
    bolt: { x: 0, y: figure(figures, "clamp-boltY"), z: figure(figures, "clamp-boltZ") },
    pivot: { x: 0, y: figure(figures, "clamp-pivotY"), z: figure(figures, "clamp-pivotZ") },
    axis: directions[direction],
    ...turned("clamp", figures),
  }),
});

const rod = (title: string, called: string, recorded?: string): OfferedAdjuster => ({
  name: "tieRod",
  title,
  hint: "Turns are of the sleeve or the rod; the wheel's toe follows.",
  fields: threadFields("tieRod"),
  ...recordedAs(recorded, "screw"),
  make: (figures) => ({ kind: "tieRod", name: called, ...thread("tieRod", figures) }),
});

/** The thread of the track rod. */
export const trackRod = rod("Track rod end", "track rod end");

/** The thread of the link that holds a rear wheel's toe. */
export const toeLink = rod("Toe link", "toe link", "rear.adjustment");
