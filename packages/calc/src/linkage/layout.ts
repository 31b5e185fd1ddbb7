import { z } from "zod";
import type { AxleCorners } from "./axle";
import type { Corner } from "./corner";
import { doubleWishbone } from "./double-wishbone";
import { mountFields, point, wheelFields } from "./field";
import type { Mounts, WheelHardpoints } from "./hardpoint";
import { mirrorHardpoints } from "./mirror";
import { semiTrailingArm, swingAxle } from "./pivoted-arm";
import { strut } from "./strut";

const tieRod = { tieRodInner: point("Tie rod inner joint"), tieRodOuter: point("Tie rod outer joint") };
const lowerArm = {
  lowerArmFront: point("Lower arm front pivot"),
  lowerArmRear: point("Lower arm rear pivot"),
  lowerJoint: point("Lower outer joint"),
};

/** Fields of a double wishbone corner. */
export const wishboneFields = {
  ...wheelFields,
  ...lowerArm,
  upperArmFront: point("Upper arm front pivot"),
  upperArmRear: point("Upper arm rear pivot"),
  upperJoint: point("Upper outer joint"),
  ...tieRod,
  ...mountFields(["lowerArm", "upperArm", "upright"]),
};
/** Fields of a strut corner. */
export const strutFields = {
  ...wheelFields,
  ...lowerArm,
  strutTop: point("Strut top mount"),
  strutFoot: point("Strut foot, a point on its axis"),
  ...tieRod,
  ...mountFields(["lowerArm", "upright"]),
};
/** Fields of a swing axle corner. */
export const swingAxleFields = {
  ...wheelFields,
  joint: point("Inner joint"),
  radiusArm: point("Radius arm's chassis pivot"),
  ...mountFields(["arm"]),
};
/** Fields of a semi-trailing arm corner. */
export const semiTrailingFields = {
  ...wheelFields,
  pivotInner: point("Inner pivot"),
  pivotOuter: point("Outer pivot"),
  ...mountFields(["arm"]),
};

const layout = <Name extends string>(name: Name) => z.literal(name).meta({ title: "Layout" });

/** The steered layouts, told apart by `layout`. */
export const steeredLayout = z
  .discriminatedUnion("layout", [
    z.object({ layout: layout("double wishbone"), ...wishboneFields }),
    z.object({ layout: layout("strut"), ...strutFields }),
  ])
  .meta({ title: "Corner" });

/** Every independent layout, told apart by `layout`. */
export const cornerLayout = z
  .discriminatedUnion("layout", [
    z.object({ layout: layout("double wishbone"), ...wishboneFields }),
    z.object({ layout: layout("strut"), ...strutFields }),
    z.object({ layout: layout("swing axle"), ...swingAxleFields }),
    z.object({ layout: layout("semi-trailing arm"), ...semiTrailingFields }),
  ])
  .meta({ title: "Corner" });

/** A corner as read, with the name of its layout. */
export type CornerLayout = z.output<typeof cornerLayout>;

/** Both corners of an axle alike on both sides. */
export function assemblePair(corner: CornerLayout): AxleCorners {
  switch (corner.layout) {
    case "double wishbone":
      return pair(doubleWishbone, { ...corner, side: "left" });
    case "strut":
      return pair(strut, { ...corner, side: "left" });
    case "swing axle":
      return pair(swingAxle, { ...corner, side: "left" });
    case "semi-trailing arm":
      return pair(semiTrailingArm, { ...corner, side: "left" });
  }
}

function pair<Hardpoints extends WheelHardpoints & Mounts<string>>(
  build: (hardpoints: Hardpoints) => Corner,
  left: Hardpoints,
): AxleCorners {
  return { left: build(left), right: build(mirrorHardpoints(left)) };
}
