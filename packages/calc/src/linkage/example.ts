import type { Vector } from "../alignment/vector";
import type { WishboneHardpoints } from "./double-wishbone";
import type { LiveAxleHardpoints } from "./live-axle";
import type { SemiTrailingHardpoints, SwingAxleHardpoints } from "./pivoted-arm";
import type { StrutHardpoints } from "./strut";

/** Invented hardpoints of believable small cars, for the catalogue's examples, the tests and the benchmark. */
const mm = (x: number, y: number, z: number): Vector => ({ x: x / 1000, y: y / 1000, z: z / 1000 });
const degree = Math.PI / 180;

/** A front corner with the rack behind the axle, spring and damper on the lower arm. */
export const exampleWishbone: WishboneHardpoints = {
  side: "left",
  wheelCentre: mm(0, 650, 285),
  camber: -0.5 * degree,
  toeIn: (6 / 60) * degree,
  loadedRadius: 0.285,
  lowerArmFront: mm(135, 240, 190),
  lowerArmRear: mm(-125, 245, 184),
  lowerJoint: mm(6, 600, 165),
  upperArmFront: mm(80, 310, 402),
  upperArmRear: mm(-110, 312, 395),
  upperJoint: mm(-12, 568, 418),
  tieRodInner: mm(-118, 258, 213),
  tieRodOuter: mm(-128, 584, 201),
  spring: { chassis: mm(0, 345, 520), moving: mm(-2, 520, 178), on: "lowerArm" },
  damper: { chassis: mm(0, 345, 520), moving: mm(-2, 520, 178), on: "lowerArm" },
  bar: {
    axis: { from: mm(230, -150, 260), to: mm(230, 150, 260) },
    armEnd: mm(40, 470, 268),
    moving: mm(34, 476, 176),
    on: "lowerArm",
  },
};

/** A front corner on a strut, with the rack behind the axle. */
export const exampleStrut: StrutHardpoints = {
  side: "left",
  wheelCentre: mm(0, 660, 290),
  camber: -0.75 * degree,
  toeIn: (5 / 60) * degree,
  loadedRadius: 0.29,
  lowerArmFront: mm(40, 300, 205),
  lowerArmRear: mm(-260, 310, 215),
  lowerJoint: mm(8, 622, 182),
  strutTop: mm(-42, 540, 790),
  strutFoot: mm(-6, 590, 330),
  tieRodInner: mm(-135, 290, 245),
  tieRodOuter: mm(-128, 628, 232),
  bar: {
    axis: { from: mm(-330, -200, 200), to: mm(-330, 200, 200) },
    armEnd: mm(-60, 520, 210),
    moving: mm(-55, 560, 440),
    on: "upright",
  },
};

/** A rear half axle on a joint beside the final drive, with a radius arm ahead of it. */
export const exampleSwingAxle: SwingAxleHardpoints = {
  side: "left",
  wheelCentre: mm(-2300, 640, 290),
  camber: 0.5 * degree,
  toeIn: 0,
  loadedRadius: 0.29,
  joint: mm(-2300, 95, 300),
  radiusArm: mm(-1900, 160, 275),
  spring: { chassis: mm(-2290, 430, 560), moving: mm(-2300, 450, 290), on: "arm" },
};

/** A rear semi-trailing arm, pivots raked by about 18° in plan. */
export const exampleSemiTrailing: SemiTrailingHardpoints = {
  side: "left",
  wheelCentre: mm(-2400, 670, 295),
  camber: -1 * degree,
  toeIn: (8 / 60) * degree,
  loadedRadius: 0.295,
  pivotInner: mm(-2080, 180, 280),
  pivotOuter: mm(-1955, 560, 290),
  spring: { chassis: mm(-2250, 420, 520), moving: mm(-2260, 440, 270), on: "arm" },
};

const axleEnd = (sign: 1 | -1): LiveAxleHardpoints["left"] => ({
  wheelCentre: mm(-2250, 640 * sign, 300),
  camber: 0,
  toeIn: 0,
  loadedRadius: 0.3,
  spring: { chassis: mm(-2240, 430 * sign, 590), moving: mm(-2250, 450 * sign, 340), on: "axle" },
  damper: { chassis: mm(-2330, 380 * sign, 600), moving: mm(-2320, 500 * sign, 250), on: "axle" },
});

/** A live axle on two lower links and one upper, with a Panhard rod. */
export const exampleLiveAxle: LiveAxleHardpoints = {
  left: axleEnd(1),
  right: axleEnd(-1),
  location: {
    kind: "three-link",
    links: [
      { chassis: mm(-1780, 470, 255), axle: mm(-2250, 500, 270) },
      { chassis: mm(-1780, -470, 255), axle: mm(-2250, -500, 270) },
      { chassis: mm(-1900, 0, 400), axle: mm(-2230, 0, 420) },
    ],
  },
  lateral: { kind: "panhard", chassis: mm(-2330, -430, 345), axle: mm(-2330, 440, 305) },
};

/** The same axle held sideways by a Watt linkage with its bellcrank on the axle. */
export const exampleWattAxle: LiveAxleHardpoints = {
  ...exampleLiveAxle,
  lateral: {
    kind: "watt",
    pivotOn: "axle",
    pivot: mm(-2330, 0, 300),
    firstArm: mm(-2330, 0, 360),
    firstEnd: mm(-2330, 420, 360),
    secondArm: mm(-2330, 0, 240),
    secondEnd: mm(-2330, -420, 240),
  },
};
