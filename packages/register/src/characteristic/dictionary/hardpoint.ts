import type { Characteristic } from "../characteristic";
import { length, part } from "./preset";

type Axle = "front" | "rear";
type Point = readonly [name: string, words: string, where?: string];

const strutFoot = "A point on the strut's axis at its foot, where the tube enters the upright";

const points: Readonly<Record<Axle, readonly Point[]>> = {
  front: [
    ["upperArmFront", "upper arm front pivot"],
    ["upperArmRear", "upper arm rear pivot"],
    ["upperJoint", "upper outer joint"],
    ["lowerArmFront", "lower arm front pivot"],
    ["lowerArmRear", "lower arm rear pivot"],
    ["lowerJoint", "lower outer joint"],
    ["strutTop", "strut top mount"],
    ["strutFoot", "strut foot", strutFoot],
    ["tieRodInner", "tie rod inner joint"],
    ["tieRodOuter", "tie rod outer joint"],
  ],
  rear: [
    ["armInner", "trailing arm inner pivot"],
    ["armOuter", "trailing arm outer pivot"],
    ["halfAxleJoint", "half axle inner joint"],
    ["radiusArm", "radius arm chassis pivot"],
    ["upperArmFront", "upper arm front pivot"],
    ["upperArmRear", "upper arm rear pivot"],
    ["upperJoint", "upper outer joint"],
    ["lowerArmFront", "lower arm front pivot"],
    ["lowerArmRear", "lower arm rear pivot"],
    ["lowerJoint", "lower outer joint"],
    ["strutTop", "strut top mount"],
    ["strutFoot", "strut foot", strutFoot],
    ["toeLinkInner", "toe link inner joint"],
    ["toeLinkOuter", "toe link outer joint"],
  ],
};

const axes = [
  ["x", "forward of the axle", -1, 1],
  ["y", "outboard of the car's centre plane", 0, 1],
  ["z", "above the ground", -0.1, 1.2],
] as const;

const names = { front: "Front", rear: "Rear" } as const;

const hardpointsOf = (axle: Axle): readonly Characteristic[] =>
  points[axle].flatMap(([point, words, where = `Centre of the ${words}`]) =>
    axes.map(
      ([axis, direction, minimum, maximum]): Characteristic => ({
        ...part,
        ...length,
        assembly: `${axle}Suspension`,
        sided: true,
        key: `${axle}.hardpoint.${point}.${axis}`,
        label: `${names[axle]} ${words} ${axis}`,
        minimum,
        maximum,
        help: `${where}, ${direction.replace("the axle", `the ${axle} axle`)}, with the car level at ride height.`,
      }),
    ),
  );

/**
 * The suspensions' pivots, at ride height, in ISO 8855 axes with the origin on the ground under the middle of the axle
 * that they belong to: what is measured from the rear wheels must not carry the error of a wheelbase. y is counted
 * outboard on both sides, so that a car built alike on both sides has equal values.
 */
export const hardpoints: readonly Characteristic[] = [...hardpointsOf("front"), ...hardpointsOf("rear")];
