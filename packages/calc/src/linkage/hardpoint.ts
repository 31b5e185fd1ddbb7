import type { Side, Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import { plus } from "./vector";

/**
 * The wheel in the design position. Points in metres in the car's axes (x forward, y left, z up), angles in radians
 * in trade signs.
 */
export interface WheelHardpoints {
  readonly side: Side;
  readonly wheelCentre: Vector;
  readonly camber: number;
  readonly toeIn: number;
  /** From the wheel centre to the ground in the wheel's plane. */
  readonly loadedRadius: number;
}

/** A spring or damper from the chassis to a moving part, in the design position. */
export interface Mount<Part extends string> {
  readonly chassis: Vector;
  readonly moving: Vector;
  readonly on: Part;
}

/** One half of an anti-roll bar that turns in the chassis, with its drop link to a moving part. */
export interface BarMount<Part extends string> {
  /** Two points on the line the bar turns about. */
  readonly axis: { readonly from: Vector; readonly to: Vector };
  /** Where the drop link meets the bar's arm. */
  readonly armEnd: Vector;
  /** Where the drop link meets the moving part. */
  readonly moving: Vector;
  readonly on: Part;
}

/** What may hang on the moving parts of a corner. */
export interface Mounts<Part extends string> {
  readonly spring?: Mount<Part> | undefined;
  readonly damper?: Mount<Part> | undefined;
  readonly bar?: BarMount<Part> | undefined;
}

/** The tie rod: its inner end on the rack (or the chassis, for a toe link), its outer end on the steering arm. */
export interface TieRod {
  readonly tieRodInner: Vector;
  readonly tieRodOuter: Vector;
}

/** A linkage with a tie rod: whether that steers the wheel. */
export interface Steering {
  /** False where the rod is a toe link on the chassis, as on most rear axles: no steering axis is then told. True when left out. */
  readonly steers?: boolean | undefined;
}

/** A turn of the upright in the clamp of its strut. */
export interface Lean {
  /** What it turns about, in the design position, m. */
  readonly about: Vector;
  /** Rotation vector of the upright against the strut, rad. */
  readonly turn: Vector;
}

/** How a corner differs from its hardpoints because something was adjusted; metres. */
export interface Adjustment<Point extends string> {
  /**
   * Shift per hardpoint. A point on the chassis moves on the chassis, a joint moves in the arm that carries it, the
   * tie rod's outer end in the steering arm; no rod changes its length by that.
   */
  readonly shift?: Readonly<Partial<Record<Point, Vector>>>;
  /** Added to the tie rod's length. */
  readonly tieRod?: number;
  /** Only a strut has a clamp to turn in; other layouts refuse it. */
  readonly lean?: Lean | undefined;
}

/**
 * The points as shifted by an adjustment.
 * @throws CalcRefusal (`NO_CLAMP`) for a lean, which no shift of a point can give: a strut takes it off first
 */
export function shiftPoints<Points extends Readonly<Record<keyof Points, Vector>>>(
  points: Points,
  { shift, lean }: Adjustment<Extract<keyof Points, string>>,
): Points {
  if (lean !== undefined)
    throw new CalcRefusal(
      "NO_CLAMP",
      "only a strut carries its upright in a clamp that it can lean in",
      "lean",
    );
  const moved: Partial<Record<keyof Points, Vector>> = {};
  for (const name of Object.keys(shift ?? {}) as Extract<keyof Points, string>[]) {
    const by = shift?.[name];
    if (by !== undefined) moved[name] = plus(points[name], by);
  }
  return { ...points, ...moved };
}

/** @throws CalcRefusal naming the first coordinate that is not a finite number */
export function requirePoints(points: Readonly<Record<string, Vector>>): void {
  for (const [name, point] of Object.entries(points)) {
    for (const axis of ["x", "y", "z"] as const) {
      if (Number.isFinite(point[axis])) continue;
      throw new CalcRefusal(
        "NOT_A_POINT",
        `${name}.${axis} must be a finite number, but is ${point[axis]}`,
        name,
      );
    }
  }
}

/** @throws CalcRefusal if the wheel lies on the wrong side, or a figure is not one a wheel can have */
export function requireWheel(wheel: WheelHardpoints): void {
  requirePoints({ wheelCentre: wheel.wheelCentre });
  const outboard = wheel.side === "left" ? wheel.wheelCentre.y : -wheel.wheelCentre.y;
  if (!(outboard > 0)) {
    throw new CalcRefusal(
      "WRONG_SIDE",
      `the ${wheel.side} wheel centre has y = ${wheel.wheelCentre.y} m; y is positive to the left`,
      "wheelCentre",
    );
  }
  if (!(wheel.loadedRadius > 0 && Number.isFinite(wheel.loadedRadius))) {
    throw new CalcRefusal(
      "NOT_A_RADIUS",
      `the loaded radius must be above 0 m, but is ${wheel.loadedRadius}`,
      "loadedRadius",
    );
  }
  for (const place of ["camber", "toeIn"] as const) {
    if (Math.abs(wheel[place]) < Math.PI / 4) continue;
    throw new CalcRefusal("NOT_AN_ANGLE", `${place} must lie within ±45°, but is ${wheel[place]} rad`, place);
  }
}
