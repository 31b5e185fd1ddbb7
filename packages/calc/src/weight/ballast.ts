import { CalcRefusal } from "../catalogue/refusal";
import { finite, notNegative, positive, written } from "../spring/guard";

/** A mass and where it is along or across the car. */
export interface PlacedMass {
  /** kg. */
  readonly mass: number;
  /** m, along whichever axis is meant. */
  readonly at: number;
}

/** Two masses as one: their sum, at their common centre. */
export function together(one: PlacedMass, other: PlacedMass): PlacedMass {
  const mass = notNegative(one.mass, "mass") + notNegative(other.mass, "ballast");
  const moment = one.mass * finite(one.at, "at") + other.mass * finite(other.at, "ballastAt");
  return { mass, at: moment / positive(mass, "mass") };
}

/**
 * Ballast, kg, that moves the centre of mass to a wanted place when it is put at a given one: m·(x* − x)/(x_b − x*).
 * Zero when it is there already.
 * @throws CalcRefusal (`WRONG_SIDE`) when the ballast's place lies at or short of the wanted one
 */
export function ballastMass(car: PlacedMass, wanted: number, ballastAt: number): number {
  const move = finite(wanted, "wanted") - finite(car.at, "at");
  if (move === 0) return 0;
  const lever = finite(ballastAt, "ballastAt") - wanted;
  if (lever * move > 0) return (positive(car.mass, "mass") * move) / lever;
  throw new CalcRefusal(
    "WRONG_SIDE",
    `ballast at ${written(ballastAt, "length")} cannot bring the centre of gravity from ${written(car.at, "length")} to ${written(wanted, "length")}: it must lie beyond the wanted place`,
    "ballastAt",
  );
}

/**
 * Place, m, at which a given ballast moves the centre of mass to a wanted one: x* + m·(x* − x)/m_b.
 * @throws CalcRefusal unless the ballast weighs something
 */
export function ballastPlace(car: PlacedMass, wanted: number, ballast: number): number {
  const move = finite(wanted, "wanted") - finite(car.at, "at");
  return wanted + (positive(car.mass, "mass") * move) / positive(ballast, "ballast");
}

/**
 * Greatest share of its mass an axle or side can be brought to by ballast at a place, however heavy: that of the ballast
 * itself, 1 − x_b/L for the front axle.
 */
export function frontShareAt(at: number, wheelbase: number): number {
  return 1 - finite(at, "at") / positive(wheelbase, "wheelbase");
}
