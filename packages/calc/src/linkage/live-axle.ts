import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import type { PanhardRod, ThreeLinks, TorqueTube, WattLinkage } from "./axle-location";
import { type Mounts, requirePoints, requireWheel, type WheelHardpoints } from "./hardpoint";
import { LiveAxle } from "./live-axle-solver";
import { distance } from "./vector";

export type { LiveAxle };

/** A live axle in the design position, metres and radians. */
export interface LiveAxleHardpoints {
  readonly left: Omit<WheelHardpoints, "side"> & Mounts<"axle">;
  readonly right: Omit<WheelHardpoints, "side"> & Mounts<"axle">;
  /** What holds it lengthways and against turning. */
  readonly location: ThreeLinks | TorqueTube;
  /** What holds it sideways. */
  readonly lateral: PanhardRod | WattLinkage;
}

/**
 * A live axle located by three longitudinal links, or a torque tube on one ball joint, and sideways by a Panhard rod or
 * a Watt linkage. These are exactly the six conditions of a rigid axle that bumps and rolls. An axle on four links has
 * one too many and rolls only by what its rubber gives: enter its two upper links as one between them, which is exact
 * in bump with parallel links and close in roll. A leaf spring's front half is entered as a link.
 *
 * @throws CalcRefusal naming the hardpoint if the axle is not held, or a rod has no length
 */
export function liveAxle(hardpoints: LiveAxleHardpoints): LiveAxle {
  for (const side of ["left", "right"] as const) requireWheel({ ...hardpoints[side], side });
  const { location, lateral } = hardpoints;
  if (location.kind === "torque-tube") requirePoints({ ball: location.ball });
  else
    for (const [index, link] of location.links.entries())
      requireRod(`links.${index}`, link.chassis, link.axle);
  if (lateral.kind === "panhard") requireRod("panhard", lateral.chassis, lateral.axle);
  else {
    requirePoints({ "watt.pivot": lateral.pivot });
    if (lateral.axis !== undefined) requireRod("watt.axis", { x: 0, y: 0, z: 0 }, lateral.axis);
    requireRod("watt.first", lateral.firstArm, lateral.firstEnd);
    requireRod("watt.second", lateral.secondArm, lateral.secondEnd);
  }
  return new LiveAxle(hardpoints);
}

function requireRod(place: string, from: Vector, to: Vector): void {
  requirePoints({ [`${place}: one end`]: from, [`${place}: other end`]: to });
  if (distance(from, to) > 1e-3) return;
  throw new CalcRefusal("DEGENERATE_LINKAGE", `the rod ${place} has no length`, place);
}
