import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import type { Body } from "./body";
import { branchOf, type Circle, meetSphere } from "./circle";
import type { HungBar, HungMounts, HungStrut } from "./corner";
import { type BarMount, type Mount, type Mounts, requirePoints } from "./hardpoint";
import { addScaled, copy, cross, distance, dot, length, mutable, normalise, subtract } from "./vector";

const point = mutable();
const velocity = mutable();
const rod = mutable();

/** Hangs spring, damper and bar on the moving parts of a corner. */
export function hang<Part extends string>(
  mounts: Mounts<Part>,
  bodies: Readonly<Record<Part, Body>>,
): HungMounts {
  const { spring, damper, bar } = mounts;
  return {
    spring: spring === undefined ? () => null : hangStrut("spring", spring, bodies[spring.on]),
    damper: damper === undefined ? () => null : hangStrut("damper", damper, bodies[damper.on]),
    bar: bar === undefined ? () => null : hangBar(bar, bodies[bar.on]),
  };
}

function hangStrut(place: string, mount: Mount<string>, body: Body): () => HungStrut {
  requirePoints({ [`${place}.chassis`]: mount.chassis, [`${place}.moving`]: mount.moving });
  if (!(distance(mount.chassis, mount.moving) > 0))
    throw degenerate(place, "both its ends lie on the same spot");
  const attached = body.attach(mount.moving);
  const chassis = mutable(mount.chassis);
  return () => {
    body.locate(point, attached);
    body.velocity(velocity, point);
    subtract(rod, chassis, point);
    const size = length(rod);
    return { length: size, ratio: dot(velocity, rod) / size };
  };
}

function hangBar(mount: BarMount<string>, body: Body): () => HungBar {
  const { from, to } = mount.axis;
  requirePoints({
    "bar.axis.from": from,
    "bar.axis.to": to,
    "bar.armEnd": mount.armEnd,
    "bar.moving": mount.moving,
  });
  const circle = barCircle(mount);
  const attached = body.attach(mount.moving);
  const branch = branchOf(circle, mount.moving, mount.armEnd);
  if (branch === 0) throw degenerate("bar", "its drop link stands at a dead centre in the design position");
  const reach = distance(mount.moving, mount.armEnd);
  const sphere = { centre: point, reach, branch };
  const design = mutable();
  subtract(design, mount.armEnd, circle.centre);
  const end = mutable();
  const arm = mutable();
  const sweep = mutable();
  return () => {
    body.locate(point, attached);
    body.velocity(velocity, point);
    if (!meetSphere(end, circle, sphere)) {
      throw new CalcRefusal(
        "OUT_OF_REACH",
        "the bar's drop link does not reach its arm in this position",
        "bar",
      );
    }
    subtract(arm, end, circle.centre);
    cross(sweep, circle.axis, arm);
    subtract(rod, point, end);
    const turn = dot(velocity, rod) / dot(sweep, rod);
    if (!Number.isFinite(turn))
      throw degenerate("bar", "its drop link stands at a dead centre in this position");
    cross(sweep, design, arm);
    const angle = Math.atan2(dot(sweep, circle.axis), dot(design, arm));
    return { ratio: Math.abs(turn) * circle.radius, angle };
  };
}

function barCircle({ axis: { from, to }, armEnd }: BarMount<string>): Circle {
  const axis = mutable();
  const arm = mutable();
  const centre = mutable(from);
  subtract(axis, to, from);
  if (!(length(axis) > 0)) throw degenerate("bar", "the two points of its axis are the same");
  normalise(axis);
  subtract(arm, armEnd, from);
  addScaled(centre, from, axis, dot(arm, axis));
  const radius = distance(armEnd, centre);
  if (!(radius > 1e-3)) throw degenerate("bar", "its arm has no length");
  return { centre, axis, radius };
}

function degenerate(place: string, why: string): CalcRefusal {
  return new CalcRefusal("DEGENERATE_LINKAGE", `the ${place} cannot work: ${why}`, place);
}

/** A copy of a vector that later moves do not change. */
export function snapshot(of: Vector): Vector {
  const still = mutable();
  copy(still, of);
  return still;
}
