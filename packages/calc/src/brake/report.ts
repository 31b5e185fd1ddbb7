import { standardGravity } from "../quantity/unit-table/unit";
import { type BrakedCar, idealFrontShare } from "./balance";
import { stoppingDistance } from "./stop";
import { type BrakedStop, type BrakeSystem, brakedStop } from "./system";

/** A braked stop with what it means on the road. */
export interface StopOnRoad extends BrakedStop {
  /** At the deceleration reached. */
  readonly idealFrontShare: number;
  /** From the first touch to rest with an even build-up of 0.3 s, m; `null` when the car does not slow. */
  readonly distance: number | null;
}

/** Build-up time of the deceleration in whole-system figures, s. */
const buildUpTime = 0.3;

/** The stop that a pedal force makes from a speed (m/s) on a road of the given adhesion. */
export function stopOnRoad(
  system: BrakeSystem,
  car: BrakedCar,
  {
    pedalForce,
    adhesion,
    speed,
  }: { readonly pedalForce: number; readonly adhesion: number; readonly speed: number },
): StopOnRoad {
  const stop = brakedStop(system, car, { pedalForce, adhesion });
  const deceleration = stop.deceleration * standardGravity;
  return {
    ...stop,
    idealFrontShare: idealFrontShare(car, stop.deceleration),
    distance:
      deceleration > 0 ? stoppingDistance({ speed, deceleration, buildUpTime }).brakingDistance : null,
  };
}
