import type { AxleName, RollCar } from "./car";
import { perAxle, type RollGradient, rollGradient } from "./gradient";

/** Which bars are on the car. */
export const barFittings = ["both", "frontOnly", "rearOnly", "none"] as const;
export type BarFitting = (typeof barFittings)[number];

const removed: Readonly<Record<BarFitting, readonly AxleName[]>> = {
  both: [],
  frontOnly: ["rear"],
  rearOnly: ["front"],
  none: ["front", "rear"],
};

/** The same car with some of its bars taken off (their weight left on it). */
export function withBars(car: RollCar, fitting: BarFitting): RollCar {
  const without = removed[fitting];
  return {
    ...car,
    ...perAxle((name) => (without.includes(name) ? { ...car[name], barWheelRate: 0 } : car[name])),
  };
}

/**
 * Roll gradient and load-transfer share of the same car with both bars, with each alone and with none.
 * @throws CalcRefusal as {@link rollGradient}: without its bars a tall, soft car may not stand
 */
export function compareBars(car: RollCar): Readonly<Record<BarFitting, RollGradient>> {
  const answer = (fitting: BarFitting): RollGradient => rollGradient(withBars(car, fitting));
  return {
    both: answer("both"),
    frontOnly: answer("frontOnly"),
    rearOnly: answer("rearOnly"),
    none: answer("none"),
  };
}
