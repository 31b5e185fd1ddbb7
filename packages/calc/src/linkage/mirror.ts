import type { Vector } from "../alignment/vector";
import type { BarMount, Mount, Mounts, WheelHardpoints } from "./hardpoint";

/** A point or direction on the other side of the centre plane. */
export function mirrorPoint({ x, y, z }: Vector): Vector {
  return { x, y: 0 - y, z };
}

/**
 * The hardpoints of the opposite corner of a symmetric car. Angles stay: the trade's signs are alike on both sides.
 * Every value that is a point is mirrored, whatever the layout.
 */
export function mirrorHardpoints<Hardpoints extends WheelHardpoints & Mounts<string>>(
  hardpoints: Hardpoints,
): Hardpoints {
  const mirrored = Object.fromEntries(
    Object.entries(hardpoints).map(([name, value]) => [name, isPoint(value) ? mirrorPoint(value) : value]),
  );
  const { spring, damper, bar } = hardpoints;
  return {
    ...hardpoints,
    ...mirrored,
    side: hardpoints.side === "left" ? "right" : "left",
    ...(spring === undefined ? {} : { spring: mirrorMount(spring) }),
    ...(damper === undefined ? {} : { damper: mirrorMount(damper) }),
    ...(bar === undefined ? {} : { bar: mirrorBar(bar) }),
  };
}

function mirrorMount(mount: Mount<string>): Mount<string> {
  return { ...mount, chassis: mirrorPoint(mount.chassis), moving: mirrorPoint(mount.moving) };
}

function mirrorBar(bar: BarMount<string>): BarMount<string> {
  const { from, to } = bar.axis;
  return {
    ...bar,
    // Turned round as well, so that an upward arm turns the same way on both sides.
    axis: { from: mirrorPoint(to), to: mirrorPoint(from) },
    armEnd: mirrorPoint(bar.armEnd),
    moving: mirrorPoint(bar.moving),
  };
}

function isPoint(value: unknown): value is Vector {
  return typeof value === "object" && value !== null && "x" in value && "y" in value && "z" in value;
}
