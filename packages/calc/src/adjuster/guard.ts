import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";

interface Named {
  readonly name: string;
}

/** The direction of an adjuster, of length 1. @throws CalcRefusal naming the adjuster if it has none */
export function unitDirection(adjuster: Named, { x, y, z }: Vector): Vector {
  const size = Math.hypot(x, y, z);
  requireOf(adjuster, size > 0 && Number.isFinite(size), `it needs a direction, but has (${x}, ${y}, ${z})`);
  return { x: x / size, y: y / size, z: z / size };
}

/** @throws CalcRefusal (`NOT_AN_ADJUSTER`) naming the adjuster and what is wrong with it */
export function requireOf(adjuster: Named, holds: boolean, why: string): void {
  if (!holds)
    throw new CalcRefusal(
      "NOT_AN_ADJUSTER",
      `the adjuster "${adjuster.name}" cannot be: ${why}`,
      adjuster.name,
    );
}

/** An eccentric as it stands: eccentricity in m, angles in rad. */
export interface Turned extends Named {
  readonly eccentricity: number;
  readonly setting: number;
  readonly step: number;
}

/** @throws CalcRefusal naming the eccentric if it moves nothing, has no step, or stands beyond a quarter turn */
export function requireEccentric(adjuster: Turned): void {
  const { eccentricity, setting, step } = adjuster;
  requireOf(adjuster, eccentricity > 0, `its eccentricity must be above 0 m, but is ${eccentricity}`);
  requireOf(adjuster, step > 0, `its step must be above 0 rad, but is ${step}`);
  const within = Math.abs(setting) <= Math.PI / 2;
  requireOf(adjuster, within, `its setting must lie within ±90°, but is ${setting} rad`);
}
