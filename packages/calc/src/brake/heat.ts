import { CalcRefusal } from "../catalogue/refusal";
import { finite, notNegative, positive, wholeNumber } from "../spring/guard";
import { share } from "./guard";

/**
 * Energy a car loses between two speeds, J: ½·m·(v₁² − v₂²)·(1 + rotating share).
 * @param rotatingShare inertia of wheels and driveline as a share of the mass, 0 when left out
 */
export function brakingEnergy(
  mass: number,
  {
    fromSpeed,
    toSpeed = 0,
    rotatingShare = 0,
  }: { fromSpeed: number; toSpeed?: number; rotatingShare?: number },
): number {
  const [from, to] = [notNegative(fromSpeed, "fromSpeed"), notNegative(toSpeed, "toSpeed")];
  if (to > from)
    throw new CalcRefusal("NOT_SLOWING", `the car cannot brake from ${from} to ${to} m/s`, "toSpeed");
  const inertia = positive(mass, "mass") * (1 + notNegative(rotatingShare, "rotatingShare"));
  return (inertia * (from * from - to * to)) / 2;
}

/** Iron that takes the heat. */
export interface HeatSink {
  /** kg. */
  readonly mass: number;
  /** J/(kg·K). */
  readonly specificHeat: number;
}

/** Rise of the iron's mean temperature from a heat, K: Q/(m·c), nothing lost meanwhile. */
export function temperatureRise(heat: number, { mass, specificHeat }: HeatSink): number {
  return notNegative(heat, "heat") / (positive(mass, "mass") * positive(specificHeat, "specificHeat"));
}

/** Stops one after another, all alike. Temperatures K. */
export interface StopSeries {
  /** Stops, 1 or more. */
  readonly count: number;
  /** Rise per stop. */
  readonly rise: number;
  readonly ambient: number;
  /** Before the first stop; the ambient when left out. */
  readonly start?: number | undefined;
  /** From one stop to the next, s. */
  readonly interval: number;
  /** Time in which the excess over the ambient falls to 37 %, s; left out: nothing cools. */
  readonly coolingTime?: number | undefined;
}

/** Most stops in one series. */
export const stopLimit = 1000;

/**
 * Temperature right after each stop, K: T_n = T_a + (T_{n−1} − T_a)·e^(−t/τ) + ΔT. The first stop begins at the
 * start temperature.
 * @throws CalcRefusal for more than {@link stopLimit} stops, or a number that is not physical
 */
export function seriesTemperatures(series: StopSeries): number[] {
  const { ambient, start = ambient, interval, coolingTime, rise } = series;
  const count = wholeNumber(series.count, "count");
  if (count < 1 || count > stopLimit)
    throw new CalcRefusal("STOPS", `a series has 1 to ${stopLimit} stops, not ${count}`, "count");
  const left = excessLeft(interval, coolingTime);
  positive(ambient, "ambient");
  let excess = finite(start, "start") - ambient;
  return Array.from({ length: count }, (_, stop) => {
    excess = (stop === 0 ? excess : excess * left) + notNegative(rise, "rise");
    return ambient + excess;
  });
}

/**
 * Temperature right after a stop that endless repetition tends to, K: T_a + ΔT/(1 − e^(−t/τ)); `undefined` where
 * nothing cools.
 */
export function settledTemperature({ ambient, interval, coolingTime, rise }: StopSeries): number | undefined {
  const left = excessLeft(interval, coolingTime);
  return left === 1 ? undefined : ambient + rise / (1 - left);
}

function excessLeft(interval: number, coolingTime: number | undefined): number {
  const time = notNegative(interval, "interval");
  return coolingTime === undefined ? 1 : Math.exp(-time / positive(coolingTime, "coolingTime"));
}

/** Cooling time of a disc, s: m·c/(h·A). h: 40 to 80 W/(m²·K) for a disc in the airstream of a moving car. */
export function coolingTimeOf({ mass, specificHeat }: HeatSink, heatTransfer: number, area: number): number {
  const loss = positive(heatTransfer, "heatTransfer") * positive(area, "area");
  return (positive(mass, "mass") * positive(specificHeat, "specificHeat")) / loss;
}

/** Heat into one brake of an axle, J: energy × the axle's share of the braking ÷ 2 wheels × share not taken by pads. */
export function heatPerBrake(energy: number, axleShare: number, shareToIron = 1): number {
  return (
    (notNegative(energy, "energy") * share(axleShare, "axleShare") * share(shareToIron, "shareToIron")) / 2
  );
}
