import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive, written } from "./guard";

/** One point of a damper's dynamometer curve, in one direction. */
export interface DamperPoint {
  /** Damper shaft speed, m/s, greater than zero. */
  readonly speed: number;
  /** Force against the movement, N, not negative. */
  readonly force: number;
}

/**
 * Damper force, N, at a shaft speed, m/s: straight lines between the points, which are sorted by speed, and from the
 * origin to the first. Gas and friction force at rest are not in it.
 *
 * @throws CalcRefusal beyond the fastest point (nothing is extrapolated), for two points at one speed, or without points
 */
export function damperForce(points: readonly DamperPoint[], speed: number): number {
  const sorted = [{ speed: 0, force: 0 }, ...checked(points)];
  notNegative(speed, "speed");
  const upper = sorted.findIndex((point) => point.speed >= speed);
  const [above, below] = [sorted[upper], sorted[Math.max(0, upper - 1)]];
  if (above === undefined || below === undefined) throw tooFast(speed, sorted);
  if (above === below) return 0;
  return below.force + ((above.force - below.force) * (speed - below.speed)) / (above.speed - below.speed);
}

function checked(points: readonly DamperPoint[]): readonly DamperPoint[] {
  if (points.length === 0)
    throw new CalcRefusal("NO_POINT", "at least one point of speed and force is needed", "points");
  for (const { speed, force } of points) {
    positive(speed, "speed");
    notNegative(force, "force");
  }
  const sorted = points.toSorted((one, other) => one.speed - other.speed);
  const twice = sorted.find((point, index) => sorted[index + 1]?.speed === point.speed);
  if (twice === undefined) return sorted;
  throw new CalcRefusal(
    "SPEED_TWICE",
    `two forces are given at ${written(twice.speed, "speed", "mm/s")}; one is wanted`,
    "points",
  );
}

function tooFast(speed: number, sorted: readonly DamperPoint[]): CalcRefusal {
  const fastest = written(sorted.at(-1)?.speed ?? 0, "speed", "mm/s");
  const asked = written(speed, "speed", "mm/s");
  return new CalcRefusal(
    "BEYOND_CURVE",
    `the curve ends at ${fastest}; nothing is known at ${asked}`,
    "speed",
  );
}

/** Damping coefficient at a speed, N·s/m: force over speed, the slope of the line from the origin (secant). */
export function dampingCoefficient(points: readonly DamperPoint[], speed: number): number {
  return damperForce(points, positive(speed, "speed")) / speed;
}

/** A corner on its spring: sprung mass, kg, wheel rate, N/m, damper movement per wheel movement. */
export interface DampedCorner {
  readonly sprungMass: number;
  readonly wheelRate: number;
  readonly damperMotionRatio: number;
}

/** Critical damping coefficient at the wheel, N·s/m: 2√(k·m). */
export function criticalDamping({
  wheelRate,
  sprungMass,
}: Pick<DampedCorner, "wheelRate" | "sprungMass">): number {
  return 2 * Math.sqrt(positive(wheelRate, "wheelRate") * positive(sprungMass, "sprungMass"));
}

/**
 * Damping ratio ζ of a corner: c·MR²/(2√(k_w·m)); 1 is critical. Tyre and unsprung mass left out.
 * @param coefficient of the damper itself, N·s/m
 */
export function dampingRatio(coefficient: number, corner: DampedCorner): number {
  const atWheel =
    notNegative(coefficient, "coefficient") * positive(corner.damperMotionRatio, "damperMotionRatio") ** 2;
  return atWheel / criticalDamping(corner);
}
