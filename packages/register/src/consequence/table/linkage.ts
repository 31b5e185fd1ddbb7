import type { Binding, Feed } from "../binding";
import { type Axle, assumed, firstOf, group, of, wheelRadius } from "./feed";

const pointOf =
  (axle: Axle) =>
  (name: string): Feed =>
    group({
      x: of(`${axle}.hardpoint.${name}.x`, "left"),
      y: of(`${axle}.hardpoint.${name}.y`, "left"),
      z: of(`${axle}.hardpoint.${name}.z`, "left"),
    });

const halfTrack = (axle: Axle): Feed => ({
  from: "values",
  of: [{ key: `${axle}.track` }],
  says: `half of the ${axle} track`,
  value: ([track = 0]) => track / 2,
});

/** The wheel as the calculator's corners take it; x is counted from the axle that the hardpoints are of. */
const wheelOf = (axle: Axle): Readonly<Record<string, Feed>> => ({
  axle: assumed(axle, `the ${axle} axle`),
  wheelCentre: group({
    x: assumed(0, `wheel centre on the line between the ${axle} hubs`),
    y: halfTrack(axle),
    z: wheelRadius(axle),
  }),
  loadedRadius: wheelRadius(axle),
  camber: firstOf(of(`${axle}.camber`, "left"), assumed(0, "camber at ride height taken as nought")),
  toeIn: firstOf(of(`${axle}.toe`, "left"), assumed(0, "toe at ride height taken as nought")),
});

const front = pointOf("front");
const rear = pointOf("rear");

const lowerArmAndTieRod = {
  lowerArmFront: front("lowerArmFront"),
  lowerArmRear: front("lowerArmRear"),
  lowerJoint: front("lowerJoint"),
  tieRodInner: front("tieRodInner"),
  tieRodOuter: front("tieRodOuter"),
};

const rearLowerArmAndToeLink = {
  lowerArmFront: rear("lowerArmFront"),
  lowerArmRear: rear("lowerArmRear"),
  lowerJoint: rear("lowerJoint"),
  tieRodInner: rear("toeLinkInner"),
  tieRodOuter: rear("toeLinkOuter"),
};

const frontFigures = [
  { output: "castor", label: "Castor by the hardpoints" },
  { output: "camberGain", label: "Camber change per travel" },
  { output: "bumpSteer", label: "Bump steer" },
  { output: "rollCentreHeight", label: "Front roll-centre height" },
  { output: "scrub", label: "Scrub radius" },
  { output: "trail", label: "Trail" },
];
const rearFigures = [
  { output: "camberGain", label: "Rear camber change per travel" },
  { output: "bumpSteer", label: "Rear bump steer" },
  { output: "rollCentreHeight", label: "Rear roll-centre height" },
];

/** The suspensions' geometry at ride height, from their hardpoints: each way of guiding the wheels by its own linkage. */
export const linkageBindings: readonly Binding[] = [
  {
    id: "front.linkage",
    title: "Front suspension's geometry",
    computation: "linkage.doubleWishbone",
    mode: "each",
    onlyFor: { key: "front.layout", codes: ["doubleWishbone"], orUnknown: true },
    inputs: {
      ...wheelOf("front"),
      ...lowerArmAndTieRod,
      upperArmFront: front("upperArmFront"),
      upperArmRear: front("upperArmRear"),
      upperJoint: front("upperJoint"),
    },
    figures: frontFigures,
  },
  {
    id: "front.strutLinkage",
    title: "Strut front's geometry",
    computation: "linkage.strut",
    mode: "each",
    onlyFor: { key: "front.layout", codes: ["strut"] },
    inputs: {
      ...wheelOf("front"),
      ...lowerArmAndTieRod,
      strutTop: front("strutTop"),
      strutFoot: front("strutFoot"),
    },
    figures: frontFigures,
  },
  {
    id: "rear.armLinkage",
    title: "Trailing arms' geometry",
    computation: "linkage.semiTrailingArm",
    mode: "each",
    onlyFor: { key: "rear.layout", codes: ["semiTrailingArms", "trailingArms"] },
    inputs: { ...wheelOf("rear"), pivotInner: rear("armInner"), pivotOuter: rear("armOuter") },
    figures: rearFigures,
  },
  {
    id: "rear.swingLinkage",
    title: "Swing axle's geometry",
    computation: "linkage.swingAxle",
    mode: "each",
    onlyFor: { key: "rear.layout", codes: ["swingAxle"] },
    inputs: { ...wheelOf("rear"), joint: rear("halfAxleJoint"), radiusArm: rear("radiusArm") },
    figures: rearFigures,
  },
  {
    id: "rear.wishboneLinkage",
    title: "Rear wishbones' geometry",
    computation: "linkage.doubleWishbone",
    mode: "each",
    onlyFor: { key: "rear.layout", codes: ["doubleWishbone"] },
    inputs: {
      ...wheelOf("rear"),
      ...rearLowerArmAndToeLink,
      upperArmFront: rear("upperArmFront"),
      upperArmRear: rear("upperArmRear"),
      upperJoint: rear("upperJoint"),
    },
    figures: rearFigures,
  },
  {
    id: "rear.strutLinkage",
    title: "Rear struts' geometry",
    computation: "linkage.strut",
    mode: "each",
    onlyFor: { key: "rear.layout", codes: ["strut"] },
    inputs: {
      ...wheelOf("rear"),
      ...rearLowerArmAndToeLink,
      strutTop: rear("strutTop"),
      strutFoot: rear("strutFoot"),
    },
    figures: rearFigures,
  },
];
