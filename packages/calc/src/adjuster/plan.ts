import { CalcRefusal } from "../catalogue/refusal";
import type { Corner } from "../linkage/corner";
import type { Adjustment } from "../linkage/hardpoint";
import { type CornerReading, readCorner } from "../linkage/reading";
import { type Adjuster, combine, type Settable, settable } from "./adjuster";
import { searchNeighbours } from "./neighbour";
import { type Bounds, findOptimum, type Optimum, type Residuals } from "./optimum";
import { changeOf, type Move, orderMoves } from "./order";
import { ruledBy, workOrder } from "./ruling";
import { readSettings, settingOf, type Target, type TargetName } from "./setting";

export type { Move };

/** What a plan is made for. */
export interface PlanRequest<Point extends string> {
  /** The corner as adjusted, e.g. `(adjustment) => doubleWishbone(hardpoints, adjustment)`. */
  readonly assemble: (adjustment: Adjustment<Point>) => Corner;
  /** From 1 to 8, each with a name of its own. */
  readonly adjusters: readonly Adjuster<Point>[];
  readonly target: Target;
  /** How much an error in each angle matters, rad: errors are weighed in tolerances. */
  readonly tolerance: Readonly<Record<TargetName, number>>;
}

/** How to reach the target. */
export interface Plan {
  /** In the order of work; adjusters that stay are left out. */
  readonly moves: readonly Move[];
  /** What the best setting would be if everything could be set without steps, in each adjuster's own measure. */
  readonly ideal: Readonly<Record<string, number>>;
  /** Angles nobody asked for that are held where they are, since an adjuster is meant for them. */
  readonly held: readonly TargetName[];
  /** Reached less wanted (or less held), rad; `null` for what is neither. */
  readonly error: Readonly<Record<TargetName, number | null>>;
  /** True if every error lies within its tolerance. */
  readonly withinTolerance: boolean;
  /** Names of the adjusters that would have to go beyond their limits. */
  readonly atLimit: readonly string[];
  /** The whole corner before and after, for the side effects. */
  readonly before: CornerReading;
  readonly after: CornerReading;
  /** How many whole settings were weighed by the linear model, and how many of these solved exactly. */
  readonly weighed: number;
  readonly solved: number;
}

const mostAdjusters = 8;

/**
 * Which adjusters to move by how much to bring camber, castor and toe of one wheel to the target together, with the
 * wheel centre's height over the chassis held. The best settings without steps are found first, then the whole steps
 * around them are searched, so that what one adjuster leaves over is taken up by another. An angle that is not asked
 * for stays as near as can be to where it is if one of the adjusters is meant for it; otherwise it goes where it will.
 *
 * Order of work: castor first, then camber, tie rods last, since everything before moves toe (common practice, no
 * source).
 *
 * @throws CalcRefusal if nothing is asked for, an adjuster cannot be, or the linkage does not assemble
 */
export function planAdjustment<Point extends string>(request: PlanRequest<Point>): Plan {
  requireRequest(request);
  const { assemble, target } = request;
  const parts = request.adjusters.map((adjuster) => {
    const each = settable(adjuster);
    return { settable: each, rules: ruledBy(each, assemble) };
  });
  const settables = parts.map((part) => part.settable);
  const start = assemble({});
  const held = workOrder.filter(
    (name) => target[name] === undefined && parts.some(({ rules }) => rules === name),
  );
  const wanted: Target = Object.fromEntries(
    workOrder
      .filter((name) => target[name] !== undefined || held.includes(name))
      .map((name) => [name, target[name] ?? settingOf(readSettings(start), name)]),
  );
  const before = readCorner(start);
  const found = search(request, settables, wanted);
  const after = readCorner(assemble(combine(settables, found.steps)));
  const error = errorOf(after, wanted);
  return {
    moves: orderMoves(
      parts.map((part, index) => ({ ...part, steps: found.steps[index] ?? 0 })),
      assemble,
    ),
    ideal: found.ideal,
    held,
    error,
    withinTolerance: workOrder.every((name) => Math.abs(error[name] ?? 0) <= request.tolerance[name]),
    atLimit: found.atLimit,
    before,
    after,
    weighed: found.weighed,
    solved: found.solved,
  };
}

function requireRequest<Point extends string>({
  adjusters,
  target,
  tolerance,
  assemble,
}: PlanRequest<Point>): void {
  const targets = workOrder.filter((name) => target[name] !== undefined);
  if (targets.length === 0)
    throw new CalcRefusal("NO_TARGET", "camber, castor or toe must be asked for", "target");
  if (adjusters.length === 0 || adjusters.length > mostAdjusters) {
    throw new CalcRefusal(
      "NO_ADJUSTER",
      `from 1 to ${mostAdjusters} adjusters are planned with, not ${adjusters.length}`,
      "adjusters",
    );
  }
  const names = adjusters.map(({ name }) => name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined)
    throw new CalcRefusal("SAME_NAME", `two adjusters are called "${twice}"`, "adjusters");
  for (const name of targets) {
    if (!Number.isFinite(target[name]))
      throw new RangeError(`the target ${name} must be finite, but is ${target[name]}`);
  }
  for (const name of workOrder) {
    if (!(tolerance[name] > 0))
      throw new RangeError(`the tolerance of ${name} must be above 0 rad, but is ${tolerance[name]}`);
  }
  for (const name of targets) settingOf(readSettings(assemble({})), name);
}

interface Found {
  readonly steps: readonly number[];
  readonly ideal: Readonly<Record<string, number>>;
  readonly atLimit: readonly string[];
  readonly weighed: number;
  readonly solved: number;
}

function search<Point extends string>(
  request: PlanRequest<Point>,
  settables: readonly Settable<Point>[],
  wanted: Target,
): Found {
  const bounds = {
    lowest: settables.map(({ lowest }) => lowest),
    highest: settables.map(({ highest }) => highest),
  };
  const residuals = residualsOf(request, settables, wanted);
  const optimum = findOptimum(residuals, bounds);
  const settled = optimum === null ? null : searchNeighbours(optimum, residuals, bounds);
  if (optimum === null || settled === null) {
    throw new CalcRefusal(
      "CANNOT_ASSEMBLE",
      "the linkage cannot be assembled with any setting near the one wanted",
    );
  }
  const nameOf = (each: Settable<Point>): string => each.adjuster.name;
  return {
    ...settled,
    ideal: Object.fromEntries(
      settables.map((each, index) => [nameOf(each), changeOf(each, optimum.steps[index] ?? 0)]),
    ),
    atLimit: settables.filter((_, index) => blocked(optimum, bounds, index)).map(nameOf),
  };
}

/** Errors in tolerances; `null` where the linkage cannot be assembled. */
function residualsOf<Point extends string>(
  { assemble, tolerance }: PlanRequest<Point>,
  settables: readonly Settable<Point>[],
  wanted: Target,
): Residuals {
  const names = workOrder.filter((name) => wanted[name] !== undefined);
  return (steps) => {
    try {
      const settings = readSettings(assemble(combine(settables, steps)));
      return names.map(
        (name) => (settingOf(settings, name) - (wanted[name] ?? Number.NaN)) / tolerance[name],
      );
    } catch (error) {
      if (error instanceof CalcRefusal) return null;
      throw error;
    }
  };
}

function errorOf(after: CornerReading, wanted: Target): Plan["error"] {
  const off = (name: TargetName): number | null => {
    const aim = wanted[name];
    const reached = after[name];
    return aim === undefined || reached === null ? null : reached - aim;
  };
  return { camber: off("camber"), castor: off("castor"), toeIn: off("toeIn") };
}

/** True if an adjuster stands at a limit and the errors would shrink beyond it. */
function blocked(
  { steps, residuals, jacobian }: Optimum,
  { lowest, highest }: Bounds,
  index: number,
): boolean {
  const slope = residuals.reduce((sum, residual, row) => sum + residual * (jacobian[row]?.[index] ?? 0), 0);
  const step = steps[index] ?? 0;
  const low = step <= (lowest[index] ?? 0) + 1e-6 && slope > 1e-4;
  return low || (step >= (highest[index] ?? 0) - 1e-6 && slope < -1e-4);
}
