import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import type { Adjustment } from "../linkage/hardpoint";

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

/** Something on the car that moves a hardpoint in steps. */
export type Adjuster<Point extends string> =
  | ScrewedJoint<Point>
  | Shims<Point>
  | Eccentric<Point>
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
      const axis = unit(adjuster, adjuster.axis);
      requireThread(adjuster);
      return {
        adjuster,
        ...turns(adjuster),
        effect: (steps) => along([adjuster.point], axis, steps * adjuster.step * adjuster.pitch),
      };
    }
    case "tieRod":
      requireThread(adjuster);
      return {
        adjuster,
        ...turns(adjuster),
        effect: (steps) => ({ tieRod: steps * adjuster.step * adjuster.pitch }),
      };
    case "shims":
      return shims(adjuster);
    case "eccentric":
      return eccentric(adjuster);
  }
}

function shims<Point extends string>(adjuster: Shims<Point>): Settable<Point> {
  const axis = unit(adjuster, adjuster.axis);
  const { fitted, most, thickness, points } = adjuster;
  require(adjuster, thickness > 0, `its shims must be thicker than 0 m, but are ${thickness}`);
  const counted = Number.isInteger(fitted) && Number.isInteger(most) && fitted >= 0 && most >= fitted;
  require(adjuster, counted, `whole shims are wanted, with 0 ≤ fitted ≤ most, but ${fitted} are fitted of ${most}`);
  // 0 − fitted rather than −fitted: no shims is 0, not −0.
  return {
    adjuster,
    lowest: 0 - fitted,
    highest: most - fitted,
    effect: (steps) => along(points, axis, steps * thickness),
  };
}

function eccentric<Point extends string>(adjuster: Eccentric<Point>): Settable<Point> {
  const axis = unit(adjuster, adjuster.axis);
  const across = adjuster.across === undefined ? undefined : unit(adjuster, adjuster.across);
  const { eccentricity, setting, step, points } = adjuster;
  require(adjuster, eccentricity > 0, `its eccentricity must be above 0 m, but is ${eccentricity}`);
  require(adjuster, step > 0, `its step must be above 0 rad, but is ${step}`);
  require(adjuster, Math.abs(setting) <=
    Math.PI / 2, `its setting must lie within ±90°, but is ${setting} rad`);
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
  const slack = 1e-9;
  return {
    adjuster,
    lowest: Math.ceil((-Math.PI / 2 - setting) / step - slack),
    highest: Math.floor((Math.PI / 2 - setting) / step + slack),
    effect,
  };
}

/** Everything set at once. */
export function combine<Point extends string>(
  settables: readonly Settable<Point>[],
  steps: readonly number[],
): Adjustment<Point> {
  const shift: Partial<Record<Point, Vector>> = {};
  let tieRod = 0;
  for (const [index, each] of settables.entries()) {
    const effect = each.effect(steps[index] ?? 0);
    tieRod += effect.tieRod ?? 0;
    for (const point of Object.keys(effect.shift ?? {}) as Point[]) {
      const by = effect.shift?.[point];
      if (by === undefined) continue;
      const sum = shift[point] ?? { x: 0, y: 0, z: 0 };
      shift[point] = { x: sum.x + by.x, y: sum.y + by.y, z: sum.z + by.z };
    }
  }
  return { shift, tieRod };
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
  require(adjuster, Number.isFinite(pitch) && pitch !== 0, `its pitch must not be 0 m, but is ${pitch}`);
  require(adjuster, step > 0, `its step must be above 0 turns, but is ${step}`);
  const ordered = lowest <= 0 && highest >= 0 && Number.isFinite(lowest) && Number.isFinite(highest);
  require(adjuster, ordered, `its turns must run from 0 or less to 0 or more, but run from ${lowest} to ${highest}`);
}

function turns({ step, lowest, highest }: Threaded): { lowest: number; highest: number } {
  const slack = 1e-9;
  return { lowest: Math.ceil(lowest / step - slack), highest: Math.floor(highest / step + slack) };
}

function unit(adjuster: AdjusterBase, { x, y, z }: Vector): Vector {
  const size = Math.hypot(x, y, z);
  require(adjuster, size > 0 && Number.isFinite(size), `it needs a direction, but has (${x}, ${y}, ${z})`);
  return { x: x / size, y: y / size, z: z / size };
}

function require(adjuster: AdjusterBase, holds: boolean, why: string): void {
  if (!holds)
    throw new CalcRefusal(
      "NOT_AN_ADJUSTER",
      `the adjuster "${adjuster.name}" cannot be: ${why}`,
      adjuster.name,
    );
}
