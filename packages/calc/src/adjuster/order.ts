import type { Corner } from "../linkage/corner";
import type { Adjustment } from "../linkage/hardpoint";
import { combine, type Settable } from "./adjuster";
import { workOrder } from "./ruling";
import { readSettings, type Settings, type TargetName } from "./setting";
import { instruction } from "./wording";

/** One thing to do. */
export interface Move {
  readonly adjuster: string;
  /** In the adjuster's own measure from where it stands now: turns, shims, rad of an eccentric, or m along a slot. */
  readonly change: number;
  readonly words: string;
  /** What the gauge should show when this has been done and what comes after has not. */
  readonly after: Settings;
}

/** Steps in the adjuster's own measure. */
export function changeOf({ adjuster }: Settable<string>, steps: number): number {
  return adjuster.kind === "shims" ? steps : steps * adjuster.step;
}

/** What to do, in the order of work: what is meant for castor first, then for camber, then for toe, tie rods last. */
export function orderMoves<Point extends string>(
  parts: readonly {
    readonly settable: Settable<Point>;
    readonly rules: TargetName;
    readonly steps: number;
  }[],
  assemble: (adjustment: Adjustment<Point>) => Corner,
): Move[] {
  const rank = ({ settable, rules }: (typeof parts)[number]): number =>
    settable.adjuster.kind === "tieRod" ? workOrder.length : workOrder.indexOf(rules);
  const settables = parts.map(({ settable }) => settable);
  const done = parts.map(() => 0);
  return parts
    .map((part, index) => ({ ...part, index }))
    .filter(({ steps }) => steps !== 0)
    .sort((a, b) => rank(a) - rank(b) || a.index - b.index)
    .map(({ settable, steps, index }) => {
      done[index] = steps;
      const corner = assemble(combine(settables, done));
      return {
        adjuster: settable.adjuster.name,
        change: changeOf(settable, steps),
        words: instruction(settable, steps, corner.wheel.side),
        after: readSettings(corner),
      };
    });
}
