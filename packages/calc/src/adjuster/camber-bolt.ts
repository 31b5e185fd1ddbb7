import type { Vector } from "../alignment/vector";
import type { Lean } from "../linkage/hardpoint";
import { cross, distance, dot, length, mutable, scale, subtract } from "../linkage/vector";
import { requireEccentric, requireOf, unitDirection } from "./guard";

/**
 * An eccentric bolt in the clamp that joins a strut to its upright: it pushes the upright about the clamp's other bolt.
 * Unlike a slot at the top mount it changes camber and the included angle (camber and kingpin inclination together).
 */
export interface CamberBolt {
  readonly kind: "camberBolt";
  /** As the mechanic knows it, e.g. "lower clamp bolt". */
  readonly name: string;
  /** Centre of the bolt that the upright turns about, design position, m. */
  readonly pivot: Vector;
  /** Centre of the eccentric bolt, design position, m. */
  readonly bolt: Vector;
  /** Direction in which the upright moves at the eccentric as the setting passes 0, e.g. outboard; any length. */
  readonly axis: Vector;
  /** Centre of the bolt to centre of its cam, m. */
  readonly eccentricity: number;
  /** Where it stands now, rad, within ±90°. */
  readonly setting: number;
  /** Least that can be set, rad: the marks on the washer. */
  readonly step: number;
}

/**
 * The turn of the upright in its strut for a number of steps from where the bolt stands: the cam moves the upright's hole
 * by e·(sin α − sin α₀) square to the line of both bolts, at their distance from the pivot.
 * @throws CalcRefusal naming the adjuster if its bolts are one, the direction runs along their line, or the cam is
 *   larger than their distance
 */
export function leanOf(adjuster: CamberBolt): (steps: number) => Lean {
  requireEccentric(adjuster);
  const { pivot, bolt, eccentricity, setting, step } = adjuster;
  const apart = distance(pivot, bolt);
  requireOf(
    adjuster,
    apart > 2 * eccentricity,
    `its bolts stand ${apart} m apart: too close for a cam of ${eccentricity} m`,
  );
  const arm = mutable();
  subtract(arm, bolt, pivot);
  const direction = unitDirection(adjuster, adjuster.axis);
  const turnAxis = mutable();
  cross(turnAxis, arm, direction);
  const aslant = Math.abs(dot(arm, direction)) / apart;
  requireOf(
    adjuster,
    aslant < mostAslant,
    "its direction runs along the line of both bolts, where it cannot turn the upright",
  );
  scale(turnAxis, 1 / length(turnAxis));
  return (steps) => {
    const push = eccentricity * (Math.sin(setting + steps * step) - Math.sin(setting));
    const angle = Math.asin(push / apart);
    return {
      about: pivot,
      turn: { x: turnAxis.x * angle, y: turnAxis.y * angle, z: turnAxis.z * angle },
    };
  };
}

/** Cosine of 30°: a direction nearer to the bolts' line than that is a mistake. */
const mostAslant = Math.cos(Math.PI / 6);
