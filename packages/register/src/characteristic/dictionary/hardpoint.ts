import type { Characteristic } from "../characteristic";
import { length, part } from "./preset";

const points = [
  ["upperArmFront", "upper arm front pivot"],
  ["upperArmRear", "upper arm rear pivot"],
  ["upperJoint", "upper outer joint"],
  ["lowerArmFront", "lower arm front pivot"],
  ["lowerArmRear", "lower arm rear pivot"],
  ["lowerJoint", "lower outer joint"],
  ["tieRodInner", "tie rod inner joint"],
  ["tieRodOuter", "tie rod outer joint"],
] as const;

const axes = [
  ["x", "forward of the front axle", -1, 1],
  ["y", "outboard of the car's centre plane", 0, 1],
  ["z", "above the ground", -0.1, 1.2],
] as const;

/**
 * The front suspension's pivots, at ride height, in ISO 8855 axes with the origin on the ground under the middle of
 * the front axle. y is counted outboard on both sides, so that a car
 * built alike on both sides has equal values.
 */
export const hardpoints: readonly Characteristic[] = points.flatMap(([point, words]) =>
  axes.map(
    ([axis, direction, minimum, maximum]): Characteristic => ({
      ...part,
      ...length,
      assembly: "frontSuspension",
      sided: true,
      key: `front.hardpoint.${point}.${axis}`,
      label: `Front ${words} ${axis}`,
      minimum,
      maximum,
      help: `Centre of the ${words}, ${direction}, with the car level at ride height.`,
    }),
  ),
);
