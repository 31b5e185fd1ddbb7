import type { AnyComputation } from "../catalogue/computation";
import { brakeBalanceComputation } from "./balance.entry";
import { brakeChangeComputation } from "./change.entry";
import { discTorqueComputation } from "./disc.entry";
import { drumFactorComputation } from "./drum.entry";
import { duoServoComputation } from "./duo-servo.entry";
import { brakePressureComputation } from "./pressure.entry";
import { measuredDecelerationComputation, stoppingDistanceComputation } from "./stop.entry";
import { brakeSystemComputation } from "./system.entry";
import { brakeTemperatureComputation } from "./temperature.entry";

/** The catalogue's computations on brakes. */
export const brakeComputations = [
  brakePressureComputation,
  discTorqueComputation,
  drumFactorComputation,
  duoServoComputation,
  brakeBalanceComputation,
  brakeSystemComputation,
  brakeChangeComputation,
  brakeTemperatureComputation,
  stoppingDistanceComputation,
  measuredDecelerationComputation,
] as const satisfies readonly AnyComputation[];
