import { z } from "zod";
import { toe } from "../alignment/field";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import type { Corner } from "../linkage/corner";
import { doubleWishbone } from "../linkage/double-wishbone";
import { point } from "../linkage/field";
import type { Adjustment } from "../linkage/hardpoint";
import type { CornerLayout } from "../linkage/layout";
import { semiTrailingArm, swingAxle } from "../linkage/pivoted-arm";
import { strut } from "../linkage/strut";
import type { Adjuster } from "./adjuster";

/** The hardpoints an adjuster may move, by layout. */
const pointsByLayout = {
  "double wishbone": [
    "lowerArmFront",
    "lowerArmRear",
    "lowerJoint",
    "upperArmFront",
    "upperArmRear",
    "upperJoint",
    "tieRodInner",
    "tieRodOuter",
  ],
  strut: ["lowerArmFront", "lowerArmRear", "lowerJoint", "strutTop", "tieRodInner", "tieRodOuter"],
  "swing axle": ["joint", "radiusArm", "radiusArmEye"],
  "semi-trailing arm": ["pivotInner", "pivotOuter", "pivotInnerEye", "pivotOuterEye"],
} as const satisfies Record<CornerLayout["layout"], readonly string[]>;

const everyPoint = [
  "lowerArmFront",
  "lowerArmRear",
  "lowerJoint",
  "upperArmFront",
  "upperArmRear",
  "upperJoint",
  "strutTop",
  "tieRodInner",
  "tieRodOuter",
  "joint",
  "radiusArm",
  "radiusArmEye",
  "pivotInner",
  "pivotOuter",
  "pivotInnerEye",
  "pivotOuterEye",
] as const;
/** A hardpoint of any layout. */
export type AnyPoint = (typeof everyPoint)[number];

const component = (label: string) => quantity("ratio", { label, min: -1e6, max: 1e6 });
const direction = (title: string) =>
  z
    .object({
      x: component(`${title}, forwards`),
      y: component(`${title}, outboard`),
      z: component(`${title}, up`),
    })
    .meta({ title, description: "Any length" });
const kind = <Name extends string>(name: Name) => z.literal(name).meta({ title: "Kind of adjuster" });
const name = z.string().trim().min(1).max(80).meta({ title: "Name of the adjuster" });
const points = z
  .array(z.enum(everyPoint).meta({ title: "Hardpoint" }))
  .min(1)
  .max(4)
  .meta({ title: "Hardpoints it moves" });
const threadFields = {
  pitch: quantity("length", {
    label: "Movement per turn",
    help: "One pitch; negative for a left-hand thread",
    min: -0.02,
    max: 0.02,
    unit: "mm",
  }),
  step: quantity("count", { label: "Least that can be set, turns", above: 0, max: 10 }).prefault(0.5),
  lowest: quantity("count", {
    label: "Turns allowed the negative way",
    help: "From where it stands; nought or negative",
    min: -200,
    max: 0,
  }),
  highest: quantity("count", {
    label: "Turns allowed the positive way",
    help: "From where it stands",
    min: 0,
    max: 200,
  }),
};
const eccentricFields = {
  eccentricity: quantity("length", { label: "Eccentricity", above: 0, max: 0.05, unit: "mm" }),
  setting: quantity("angle", { label: "Setting now", min: -Math.PI / 2, max: Math.PI / 2, unit: "°" }),
  step: quantity("angle", { label: "Least that can be set", above: 0, max: Math.PI / 2, unit: "°" }),
};

/** One adjuster; directions count y outboard. */
export const adjusterField = z
  .discriminatedUnion("kind", [
    z.object({
      kind: kind("screwedJoint"),
      name,
      point: z.enum(everyPoint).meta({ title: "Joint it moves" }),
      axis: direction("Direction of positive turns"),
      ...threadFields,
    }),
    z.object({
      kind: kind("shims"),
      name,
      points,
      axis: direction("Direction in which a shim moves them"),
      thickness: quantity("length", { label: "Thickness of one shim", above: 0, max: 0.05, unit: "mm" }),
      fitted: quantity("count", { label: "Shims fitted now", min: 0, max: 100 }),
      most: quantity("count", { label: "Shims there is room for", min: 0, max: 100 }),
    }),
    z.object({
      kind: kind("eccentric"),
      name,
      points,
      axis: direction("Direction of movement as the setting passes 0°"),
      across: direction("Direction it also moves in towards either end").optional(),
      ...eccentricFields,
    }),
    z.object({
      kind: kind("slot"),
      name,
      points,
      axis: direction("Direction of positive movement"),
      step: quantity("length", { label: "Least that can be set", above: 0, max: 0.05, unit: "mm" }),
      lowest: quantity("length", {
        label: "Movement allowed the negative way",
        help: "From where it stands; nought or negative",
        min: -0.2,
        max: 0,
        unit: "mm",
      }),
      highest: quantity("length", {
        label: "Movement allowed the positive way",
        help: "From where it stands",
        min: 0,
        max: 0.2,
        unit: "mm",
      }),
    }),
    z.object({
      kind: kind("camberBolt"),
      name,
      pivot: point("Bolt that the upright turns about"),
      bolt: point("Eccentric bolt of the strut's clamp"),
      axis: direction("Direction the upright moves in there as the setting passes 0°"),
      ...eccentricFields,
    }),
    z.object({ kind: kind("tieRod"), name, ...threadFields }),
  ])
  .meta({ title: "Adjuster" });

/** Field of the settings wanted. */
export const targetField = z
  .object({
    camber: quantity("angle", { label: "Camber wanted", min: -0.7, max: 0.7, unit: "°" }).optional(),
    castor: quantity("angle", { label: "Castor wanted", min: -0.7, max: 0.7, unit: "°" }).optional(),
    toeIn: toe({ label: "Toe of this wheel wanted" }).optional(),
  })
  .meta({ title: "Target; what is left out is held where an adjuster is meant for it" });

const tolerance = (label: string, usual: string) =>
  quantity("angle", { label, above: 0, max: 0.1, unit: "'" }).prefault(usual);
/** Field of the tolerances; what is left out is taken as the schema shows, and the working tells. */
export const toleranceField = z
  .object({
    camber: tolerance("Error in camber that matters as much as", "0°5'"),
    castor: tolerance("an error in castor of", "0°15'"),
    toeIn: tolerance("and an error in this wheel's toe of", "0°2'"),
  })
  .prefault({})
  .meta({ title: "Tolerances" });

/** The left-hand corner of a layout as adjusted. */
export function assembleAdjusted(corner: CornerLayout): (adjustment: Adjustment<AnyPoint>) => Corner {
  switch (corner.layout) {
    case "double wishbone":
      return (adjustment) => doubleWishbone({ ...corner, side: "left" }, adjustment);
    case "strut":
      return (adjustment) => strut({ ...corner, side: "left" }, adjustment);
    case "swing axle":
      return (adjustment) => swingAxle({ ...corner, side: "left" }, adjustment);
    case "semi-trailing arm":
      return (adjustment) => semiTrailingArm({ ...corner, side: "left" }, adjustment);
  }
}

/** @throws CalcRefusal if an adjuster moves a hardpoint that the layout does not have */
export function requireKnownPoints(corner: CornerLayout, adjusters: readonly Adjuster<AnyPoint>[]): void {
  const known: readonly string[] = pointsByLayout[corner.layout];
  const steers = corner.layout === "double wishbone" || corner.layout === "strut";
  for (const adjuster of adjusters) {
    if (adjuster.kind === "tieRod") {
      if (!steers) throw unknown(adjuster.name, "a tie rod", corner);
      continue;
    }
    if (adjuster.kind === "camberBolt") {
      if (corner.layout !== "strut") throw unknown(adjuster.name, "an upright clamped to a strut", corner);
      continue;
    }
    const moved = adjuster.kind === "screwedJoint" ? [adjuster.point] : adjuster.points;
    const stranger = moved.find((point) => !known.includes(point));
    if (stranger !== undefined) throw unknown(adjuster.name, stranger, corner);
  }
}

function unknown(adjuster: string, moved: string, { layout }: CornerLayout): CalcRefusal {
  const known = pointsByLayout[layout].join(", ");
  return new CalcRefusal(
    "UNKNOWN_POINT",
    `the adjuster "${adjuster}" moves ${moved}, which a ${layout} does not have; its points are ${known}`,
    "adjusters",
  );
}
