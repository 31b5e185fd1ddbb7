import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import type { Adjustment, Lean } from "../linkage/hardpoint";
import { type CamberBolt, leanOf } from "./camber-bolt";
import { requireEccentric, requireOf, type Turned, unitDirection } from "./guard";

interface AdjusterBase {
  /** As the mechanic knows it, e.g. "upper ball joint". */
  readonly name: string;
}

/** A joint on a threaded shank that moves along its own axis as it is turned, in the arm that carries it. */
export interface ScrewedJoint<Point extends string> extends AdjusterBase {
  readonly kind: "screwedJoint";
  readonly point: Point;
  /** Direction in which positive turns move the joint, in the design position; any length. */
  readonly axis: Vector;
  /** Movement per turn, m. */
  readonly pitch: number;
  /** Least that can be set, turns: ½ where the joint's flats or its grease nipple must come round. */
  readonly step: number;
  /** Turns allowed from where it stands now: 0 or less, and 0 or more. */
  readonly lowest: number;
  readonly highest: number;
}

/** Whole shims of one thickness under a bracket on the chassis. */
export interface Shims<Point extends string> extends AdjusterBase {
  readonly kind: "shims";
  /** The pivots that the bracket carries. */
  readonly points: readonly Point[];
  /** Direction in which a shim put in moves them; any length. */
  readonly axis: Vector;
  readonly thickness: number;
  /** How many are in now, and how many there is room (and bolt) for. */
  readonly fitted: number;
  readonly most: number;
}

/** A pivot on an eccentric: in a slot it moves along `axis` alone, otherwise round a circle. */
export interface Eccentric<Point extends string> extends AdjusterBase {
  readonly kind: "eccentric";
  readonly points: readonly Point[];
  /** Direction of movement as the setting passes 0. */
  readonly axis: Vector;
  /** Direction it also moves in towards either end; left out where a slot holds it. */
  readonly across?: Vector | undefined;
  /** Centre of the bolt to centre of the bush, m. */
  readonly eccentricity: number;
  /** Where it stands now, rad, within ±90°; beyond these it comes back. */
  readonly setting: number;
  /** Least that can be set, rad: the marks on the washer. */
  readonly step: number;
}

/** The threads of a tie rod (or of a toe link). */
export interface TieRodThread extends AdjusterBase {
  readonly kind: "tieRod";
  /** Lengthening per positive turn, m: one pitch, or both where the ends are handed. */
  readonly pitch: number;
  readonly step: number;
  readonly lowest: number;
  readonly highest: number;
}

/** Bolts in slots: a strut's top mount on its plate, a bracket on the chassis. */
export interface Slot<Point extends string> extends AdjusterBase {
  readonly kind: "slot";
  readonly points: readonly Point[];
  /** Direction of positive movement along the slot; any length. */
  readonly axis: Vector;
  /** Least that can be set, m: the marks, or what a rule shows. */
  readonly step: number;
  /** Movement allowed from where it stands now, m: 0 or less, and 0 or more. */
  readonly lowest: number;
  readonly highest: number;
}

/** Something on the car that moves a hardpoint, or the upright in its strut, in steps. */
export type Adjuster<Point extends string> =
  | ScrewedJoint<Point>
  | Shims<Point>
  | Eccentric<Point>
  | Slot<Point>
  | CamberBolt
  | TieRodThread;

/** An adjuster as the planner sees it: a whole number of steps, nought where it stands now. */
export interface Settable<Point extends string> {
  readonly adjuster: Adjuster<Point>;
  readonly lowest: number;
  readonly highest: number;
  /** What the linkage becomes; also between whole steps. */
  effect(steps: number): Adjustment<Point>;
}

/**
 * The adjuster in whole steps.
 * @throws CalcRefusal naming the adjuster if a figure is not one it can have
 */
export function settable<Point extends string>(adjuster: Adjuster<Point>): Settable<Point> {
  switch (adjuster.kind) {
    case "screwedJoint": {
      const axis = unitDirection(adjuster, adjuster.axis);
      requireThread(adjuster);
      return {
        adjuster,
        ...wholeSteps(adjuster),
        effect: (steps) => along([adjuster.point], axis, steps * adjuster.step * adjuster.pitch),
      };
    }
    case "tieRod":
      requireThread(adjuster);
      return {
        adjuster,
        ...wholeSteps(adjuster),
        effect: (steps) => ({ tieRod: steps * adjuster.step * adjuster.pitch }),
      };
    case "shims":
      return shims(adjuster);
    case "eccentric":
      return eccentric(adjuster);
    case "slot":
      return slot(adjuster);
    case "camberBolt": {
      const lean = leanOf(adjuster);
      return { adjuster, ...quarterTurns(adjuster), effect: (steps) => ({ lean: lean(steps) }) };
    }
  }
}

function slot<Point extends string>(adjuster: Slot<Point>): Settable<Point> {
  const axis = unitDirection(adjuster, adjuster.axis);
  const { step, lowest, highest, points } = adjuster;
  requireOf(adjuster, step > 0, `its step must be above 0 m, but is ${step}`);
  requireRange(
    adjuster,
    `its slot must run from 0 or less to 0 or more, but runs from ${lowest} to ${highest} m`,
  );
  return { adjuster, ...wholeSteps(adjuster), effect: (steps) => along(points, axis, steps * step) };
}

function shims<Point extends string>(adjuster: Shims<Point>): Settable<Point> {
  const axis = unitDirection(adjuster, adjuster.axis);
  const { fitted, most, thickness, points } = adjuster;
  requireOf(adjuster, thickness > 0, `its shims must be thicker than 0 m, but are ${thickness}`);
  const counted = Number.isInteger(fitted) && Number.isInteger(most) && fitted >= 0 && most >= fitted;
  requireOf(
    adjuster,
    counted,
    `whole shims are wanted, with 0 ≤ fitted ≤ most, but ${fitted} are fitted of ${most}`,
  );
  // 0 − fitted rather than −fitted: no shims is 0, not −0.
  return {
    adjuster,
    lowest: 0 - fitted,
    highest: most - fitted,
    effect: (steps) => along(points, axis, steps * thickness),
  };
}

function eccentric<Point extends string>(adjuster: Eccentric<Point>): Settable<Point> {
  const axis = unitDirection(adjuster, adjuster.axis);
  const across = adjuster.across === undefined ? undefined : unitDirection(adjuster, adjuster.across);
  const { eccentricity, setting, step, points } = adjuster;
  requireEccentric(adjuster);
  const effect = (steps: number): Adjustment<Point> => {
    const angle = setting + steps * step;
    const forth = eccentricity * (Math.sin(angle) - Math.sin(setting));
    const aside = across === undefined ? 0 : eccentricity * (Math.cos(setting) - Math.cos(angle));
    const aslant = across ?? axis;
    const shift = {
      x: axis.x * forth + aslant.x * aside,
      y: axis.y * forth + aslant.y * aside,
      z: axis.z * forth + aslant.z * aside,
    };
    return shiftEach(points, shift);
  };
  return { adjuster, ...quarterTurns(adjuster), effect };
}

/** Whole steps to 90° either way, beyond which an eccentric comes back. */
function quarterTurns({ setting, step }: Turned): { lowest: number; highest: number } {
  const slack = 1e-9;
  return {
    lowest: Math.ceil((-Math.PI / 2 - setting) / step - slack),
    highest: Math.floor((Math.PI / 2 - setting) / step + slack),
  };
}

/** Everything set at once. */
export function combine<Point extends string>(
  settables: readonly Settable<Point>[],
  steps: readonly number[],
): Adjustment<Point> {
  const shift: Partial<Record<Point, Vector>> = {};
  let tieRod = 0;
  let lean: Lean | undefined;
  for (const [index, each] of settables.entries()) {
    const effect = each.effect(steps[index] ?? 0);
    tieRod += effect.tieRod ?? 0;
    if (lean !== undefined && effect.lean !== undefined)
      throw new CalcRefusal("TWO_LEANS", "a strut's clamp leans about one bolt, not two", "adjusters");
    lean ??= effect.lean;
    for (const point of Object.keys(effect.shift ?? {}) as Point[]) {
      const by = effect.shift?.[point];
      if (by === undefined) continue;
      const sum = shift[point] ?? { x: 0, y: 0, z: 0 };
      shift[point] = { x: sum.x + by.x, y: sum.y + by.y, z: sum.z + by.z };
    }
  }
  return { shift, tieRod, ...(lean === undefined ? {} : { lean }) };
}

function along<Point extends string>(points: readonly Point[], axis: Vector, by: number): Adjustment<Point> {
  return shiftEach(points, { x: axis.x * by, y: axis.y * by, z: axis.z * by });
}

function shiftEach<Point extends string>(points: readonly Point[], by: Vector): Adjustment<Point> {
  const shift: Partial<Record<Point, Vector>> = {};
  for (const point of points) shift[point] = by;
  return { shift };
}

type Threaded = ScrewedJoint<string> | TieRodThread;

function requireThread(adjuster: Threaded): void {
  const { pitch, step, lowest, highest } = adjuster;
  requireOf(adjuster, Number.isFinite(pitch) && pitch !== 0, `its pitch must not be 0 m, but is ${pitch}`);
  requireOf(adjuster, step > 0, `its step must be above 0 turns, but is ${step}`);
  requireRange(
    adjuster,
    `its turns must run from 0 or less to 0 or more, but run from ${lowest} to ${highest}`,
  );
}

type Ranged = Threaded | Slot<string>;

function requireRange(adjuster: Ranged, why: string): void {
  const { lowest, highest } = adjuster;
  const ordered = lowest <= 0 && highest >= 0 && Number.isFinite(lowest) && Number.isFinite(highest);
  requireOf(adjuster, ordered, why);
}

function wholeSteps({ step, lowest, highest }: Ranged): { lowest: number; highest: number } {
  const slack = 1e-9;
  return { lowest: Math.ceil(lowest / step - slack), highest: Math.floor(highest / step + slack) };
}
