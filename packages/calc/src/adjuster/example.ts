import type { SemiTrailingPoints, WishbonePoint } from "../linkage/index";
import type { Adjuster } from "./adjuster";

/** Adjusters that the example double wishbone is believed to have; invented. */
export const exampleAdjusters: readonly Adjuster<WishbonePoint>[] = [
  {
    kind: "screwedJoint",
    name: "upper ball joint",
    point: "upperJoint",
    axis: { x: -0.05, y: 1, z: 0.08 },
    pitch: 0.0015,
    step: 0.5,
    lowest: -4,
    highest: 4,
  },
  {
    kind: "shims",
    name: "upper arm washers",
    points: ["upperArmFront", "upperArmRear"],
    axis: { x: -1, y: 0, z: 0 },
    thickness: 0.0016,
    fitted: 3,
    most: 6,
  },
  { kind: "tieRod", name: "track rod end", pitch: 0.0254 / 14, step: 1 / 12, lowest: -6, highest: 6 },
];

/** Adjusters of the example semi-trailing arm; invented. */
export const exampleArmAdjusters: readonly Adjuster<keyof SemiTrailingPoints>[] = [
  {
    kind: "eccentric",
    name: "outer pivot eccentric",
    points: ["pivotOuter"],
    axis: { x: 0, y: 0, z: 1 },
    eccentricity: 0.005,
    setting: 0,
    step: Math.PI / 24,
  },
  {
    kind: "shims",
    name: "inner bracket shims",
    points: ["pivotInner"],
    axis: { x: 1, y: 0, z: 0 },
    thickness: 0.001,
    fitted: 2,
    most: 8,
  },
];
