import { notNegative, positive } from "../spring/guard";

const turn = 2 * Math.PI;

/** What turns engine speed into road speed. */
export interface Gearing {
  /** Rolling circumference of the driven tyres, m. */
  readonly circumference: number;
  /** Turns of the engine per turn of the wheels: gear × final drive (× transfer gear). */
  readonly overallRatio: number;
}

/** Road travel per angle turned by the engine, m/rad: circumference over 2π·ratio. Clutch, converter and tyre slip left out. */
export function travelPerEngineAngle({ circumference, overallRatio }: Gearing): number {
  return positive(circumference, "circumference") / (turn * positive(overallRatio, "overallRatio"));
}

/** Road speed, m/s, at an engine speed, rad/s. */
export function roadSpeed(engineSpeed: number, gearing: Gearing): number {
  return notNegative(engineSpeed, "engineSpeed") * travelPerEngineAngle(gearing);
}

/** Engine speed, rad/s, at a road speed, m/s; the inverse of {@link roadSpeed}. */
export function engineSpeedAt(speed: number, gearing: Gearing): number {
  return notNegative(speed, "speed") / travelPerEngineAngle(gearing);
}

/** Turns of a wheel over a distance, m. */
export function wheelTurns(distance: number, circumference: number): number {
  return notNegative(distance, "distance") / positive(circumference, "circumference");
}

/** A mechanical speedometer's drive, taken from the gearbox output. */
export interface CableDrive {
  readonly finalDrive: number;
  /** Teeth of the worm or gear on the gearbox shaft. */
  readonly driving: number;
  /** Teeth of the pinion on the cable. */
  readonly driven: number;
}

/** Turns of the speedometer cable per turn of the wheels: final drive × driving/driven teeth. */
export function cableTurnsPerWheelTurn({ finalDrive, driving, driven }: CableDrive): number {
  return (positive(finalDrive, "finalDrive") * positive(driving, "driving")) / positive(driven, "driven");
}
