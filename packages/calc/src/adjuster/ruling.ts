import type { Corner } from "../linkage/corner";
import type { Adjustment } from "../linkage/hardpoint";
import type { Settable } from "./adjuster";
import { readSettings, type Settings, type TargetName } from "./setting";

/** The angles in the order they are worked on. */
export const workOrder = ["castor", "camber", "toeIn"] as const satisfies readonly TargetName[];

/** How far an adjuster is tried either way to see what it does, steps. */
const trial = 0.05;

/**
 * The angle an adjuster moves most where it stands, and which it is therefore meant for. A tie rod is meant for toe.
 */
export function ruledBy<Point extends string>(
  settable: Settable<Point>,
  assemble: (adjustment: Adjustment<Point>) => Corner,
): TargetName {
  if (settable.adjuster.kind === "tieRod") return "toeIn";
  const here = readSettings(assemble({}));
  const there = readSettings(assemble(settable.effect(trial)));
  const moved = (name: TargetName): number => movement(here, there, name);
  return workOrder.reduce((most, name) => (moved(name) > moved(most) ? name : most), "castor" as TargetName);
}

function movement(here: Settings, there: Settings, name: TargetName): number {
  const before = here[name];
  const after = there[name];
  return before === null || after === null ? 0 : Math.abs(after - before);
}
