import type { PlanAxle } from "./layout";

/** What was typed into a planner's form, by field. */
export type Texts = Readonly<Record<string, string>>;
type Points = Readonly<Record<string, readonly [x: number, y: number, z: number]>>;

const texts = (points: Points): Texts =>
  Object.fromEntries(
    Object.entries(points).flatMap(([name, place]) =>
      (["x", "y", "z"] as const).map((axis, index) => [`${name}-${axis}`, `${place[index]}`]),
    ),
  );
const turnable = (name: string, direction: string): Texts => ({
  [`${name}-eccentricity`]: "3 mm",
  [`${name}-setting`]: "0",
  [`${name}-mark`]: "15",
  [`${name}-direction`]: direction,
});
const threaded = (name: string): Texts => ({
  [`${name}-pitch`]: "1.5",
  [`${name}-step`]: "1/2",
  [`${name}-in`]: "4",
  [`${name}-out`]: "4",
});
const trackRod = { "tieRod-pitch": "1.5", "tieRod-step": "1/6", "tieRod-in": "5", "tieRod-out": "5" };
const swinging = { radius: "290", camber: "0°30'", toe: "0' per side", track: "1280" };

/** Struts that are tried with more than one adjuster. */
const frontStrut = texts({
  lowerArmFront: [40, 300, 205],
  lowerArmRear: [-260, 310, 215],
  lowerJoint: [8, 622, 182],
  strutTop: [-42, 540, 790],
  strutFoot: [-6, 590, 330],
  tieRodInner: [-135, 290, 245],
  tieRodOuter: [-128, 628, 232],
});
const rearStrut = texts({
  lowerArmFront: [190, 240, 195],
  lowerArmRear: [-60, 235, 200],
  lowerJoint: [5, 628, 180],
  strutTop: [-12, 545, 800],
  strutFoot: [0, 598, 340],
  toeLinkInner: [-170, 245, 205],
  toeLinkOuter: [-155, 630, 196],
});

/** Invented corners of believable small cars, with the adjusters that each is filled in with. */
export const plannedCorners: readonly (readonly [PlanAxle, string, what: string, Texts])[] = [
  [
    "front",
    "doubleWishbone",
    "an upper joint, cams at the lower pivots and the track rod",
    {
      ...{ track: "1300", radius: "285", camber: "-0°30'", toe: "toe-in 6' per side" },
      ...texts({
        lowerArmFront: [135, 240, 190],
        lowerArmRear: [-125, 245, 184],
        lowerJoint: [6, 600, 165],
        upperArmFront: [80, 310, 402],
        upperArmRear: [-110, 312, 395],
        upperJoint: [-12, 568, 418],
        tieRodInner: [-118, 258, 213],
        tieRodOuter: [-128, 584, 201],
      }),
      ...{ "upperJoint-pitch": "1.5", "upperJoint-step": "1/2", "upperJoint-in": "3", "upperJoint-out": "3" },
      ...turnable("lowerCam", "outboard"),
      ...trackRod,
    },
  ],
  [
    "front",
    "strut",
    "slots both ways at the top mount, and the track rod",
    {
      ...{ track: "1320", radius: "290", camber: "-0°45'", toe: "toe-in 5' per side" },
      ...frontStrut,
      ...{ "topAcross-mark": "1", "topAcross-back": "8", "topAcross-forth": "8" },
      ...{ "topAlong-mark": "1", "topAlong-back": "6", "topAlong-forth": "10" },
      ...trackRod,
    },
  ],
  [
    "front",
    "strut",
    "an eccentric bolt in its clamp, and the track rod",
    {
      ...{ track: "1320", radius: "290", camber: "-0°45'", toe: "toe-in 5' per side" },
      ...frontStrut,
      ...{ "clamp-boltY": "585", "clamp-boltZ": "380", "clamp-pivotY": "590", "clamp-pivotZ": "325" },
      ...turnable("clamp", "outboard"),
      ...trackRod,
    },
  ],
  [
    "rear",
    "semiTrailingArms",
    "a cam at the outer pivot and shims under the inner",
    {
      ...{ track: "1340", radius: "295", camber: "-1°0'", toe: "toe-in 8' per side" },
      ...texts({ armInner: [320, 180, 280], armOuter: [445, 560, 290] }),
      ...turnable("armOuterCam", "up"),
      ...{ "armInnerShim-thickness": "1", "armInnerShim-fitted": "3", "armInnerShim-most": "8" },
      "armInnerShim-direction": "forwards",
    },
  ],
  [
    "rear",
    "trailingArms",
    "slots at the outer pivot, level and upright",
    {
      ...{ track: "1340", radius: "295", camber: "-0°20'", toe: "toe-in 4' per side" },
      ...texts({ armInner: [420, 250, 285], armOuter: [420, 560, 285] }),
      ...{ "armOuterSlot-mark": "0.5", "armOuterSlot-back": "4", "armOuterSlot-forth": "4" },
      ...{ "armOuterRise-mark": "0.5", "armOuterRise-back": "4", "armOuterRise-forth": "4" },
    },
  ],
  [
    "rear",
    "swingAxle",
    "shims under the radius arm's pivot",
    {
      ...swinging,
      ...texts({ halfAxleJoint: [0, 95, 300], radiusArm: [400, 160, 275] }),
      ...{ "radiusArmShim-thickness": "1", "radiusArmShim-fitted": "4", "radiusArmShim-most": "9" },
      "radiusArmShim-direction": "outboard",
    },
  ],
  [
    "rear",
    "swingAxle",
    "a thread in the radius arm, and slots at its pivot",
    {
      ...swinging,
      ...texts({ halfAxleJoint: [0, 95, 300], radiusArm: [400, 160, 275] }),
      ...{ "radiusArmThread-x": "15", "radiusArmThread-y": "520", "radiusArmThread-z": "270" },
      ...threaded("radiusArmThread"),
      ...{ "radiusArmRise-mark": "0.5", "radiusArmRise-back": "4", "radiusArmRise-forth": "4" },
    },
  ],
  [
    "rear",
    "semiTrailingArms",
    "screwed eyes in the arm and slots at its outer pivot",
    {
      ...{ track: "1340", radius: "295", camber: "-1°0'", toe: "toe-in 8' per side" },
      ...texts({ armInner: [320, 180, 280], armOuter: [445, 560, 290] }),
      ...threaded("armInnerEye"),
      "armInnerEye-direction": "forwards",
      ...{ "armOuterRise-mark": "0.5", "armOuterRise-back": "4", "armOuterRise-forth": "4" },
    },
  ],
  [
    "rear",
    "doubleWishbone",
    "an upper joint, shims at the lower pivots and the toe link",
    {
      ...{ track: "1330", radius: "295", camber: "-0°45'", toe: "toe-in 7' per side" },
      ...texts({
        lowerArmFront: [210, 190, 178],
        lowerArmRear: [-150, 200, 172],
        lowerJoint: [4, 618, 160],
        upperArmFront: [120, 262, 402],
        upperArmRear: [-105, 266, 398],
        upperJoint: [2, 585, 428],
        toeLinkInner: [-190, 210, 185],
        toeLinkOuter: [-160, 610, 175],
      }),
      ...threaded("upperJoint"),
      ...{ "lowerShim-thickness": "1", "lowerShim-fitted": "3", "lowerShim-most": "8" },
      "lowerShim-direction": "outboard",
      ...trackRod,
    },
  ],
  [
    "rear",
    "strut",
    "slots at the top mount, cams at the lower pivots and the toe link",
    {
      ...{ track: "1340", radius: "290", camber: "-1°0'", toe: "toe-in 6' per side" },
      ...rearStrut,
      ...{ "topAcross-mark": "1", "topAcross-back": "6", "topAcross-forth": "6" },
      ...turnable("lowerCam", "outboard"),
      ...trackRod,
    },
  ],
  [
    "rear",
    "strut",
    "an eccentric bolt in its clamp, and the toe link",
    {
      ...{ track: "1340", radius: "290", camber: "-1°0'", toe: "toe-in 6' per side" },
      ...rearStrut,
      ...{ "clamp-boltY": "592", "clamp-boltZ": "385", "clamp-pivotY": "598", "clamp-pivotZ": "330" },
      ...turnable("clamp", "outboard"),
      ...trackRod,
    },
  ],
];
