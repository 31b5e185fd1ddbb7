import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive, written } from "../spring/guard";

/** A stop on the level. */
export interface Stop {
  /** m/s. */
  readonly speed: number;
  /** Once fully developed, m/s². */
  readonly deceleration: number;
  /** Time in which it builds up evenly from nothing, s; 0 when left out. */
  readonly buildUpTime?: number | undefined;
  /** Time before anything happens, s; 0 when left out. */
  readonly reactionTime?: number | undefined;
}

/** How far and how long. Distances m, times s. */
export interface StopResult {
  readonly reactionDistance: number;
  /** From the first touch of the brake to rest. */
  readonly brakingDistance: number;
  readonly distance: number;
  readonly time: number;
}

/**
 * Stopping distance with an even build-up of the deceleration: v·t_r, then v·t_b/2 − a·t_b²/24 + v²/(2a); a stop
 * that ends within the build-up is 2/3·v·√(2·v·t_b/a).
 * @throws CalcRefusal unless speed and times ≥ 0 and deceleration > 0
 */
export function stoppingDistance({
  speed,
  deceleration,
  buildUpTime = 0,
  reactionTime = 0,
}: Stop): StopResult {
  const v = notNegative(speed, "speed");
  const a = positive(deceleration, "deceleration");
  const rise = notNegative(buildUpTime, "buildUpTime");
  const reactionDistance = v * notNegative(reactionTime, "reactionTime");
  const lostInRise = (a * rise) / 2;
  const braking = v > lostInRise ? fullStop(v, a, rise) : shortStop(v, a, rise);
  return {
    reactionDistance,
    brakingDistance: braking.distance,
    distance: reactionDistance + braking.distance,
    time: reactionTime + braking.time,
  };
}

function fullStop(v: number, a: number, rise: number) {
  return { distance: (v * v) / (2 * a) + (v * rise) / 2 - (a * rise * rise) / 24, time: v / a + rise / 2 };
}

function shortStop(v: number, a: number, rise: number) {
  const time = Math.sqrt((2 * v * rise) / a);
  return { distance: (2 / 3) * v * time, time };
}

/**
 * Mean fully developed deceleration, m/s², between two speeds of one stop: (v_b² − v_e²)/(2·s)
 * (UN Regulation No. 13, Annex 4, 1.1.2, where v_b is 0.8 and v_e is 0.1 of the speed at the start).
 * @param distance between the two speeds, m
 */
export function meanFullyDevelopedDeceleration(fromSpeed: number, toSpeed: number, distance: number): number {
  if (!(positive(fromSpeed, "fromSpeed") > notNegative(toSpeed, "toSpeed")))
    throw new CalcRefusal(
      "NOT_SLOWING",
      `the first speed must be the greater, but ${written(fromSpeed, "speed")} is not above ${written(toSpeed, "speed")}`,
      "toSpeed",
    );
  return (fromSpeed ** 2 - toSpeed ** 2) / (2 * positive(distance, "distance"));
}
