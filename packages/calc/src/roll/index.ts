export {
  type AxleName,
  type AxleRollRate,
  axleNames,
  axleRollRate,
  type RollAxle,
  type RollCar,
} from "./car";
export { rollComputations } from "./catalogue";
export { type BarFitting, barFittings, compareBars, withBars } from "./compare";
export { type PerAxle, type RollGradient, rollGradient } from "./gradient";
export { type AxleLoads, type LongitudinalInput, longitudinalAxleLoads } from "./longitudinal";
export { type RollAim, type RollChange, reachRoll, rollChanges } from "./target";
export {
  type AxleTransfer,
  liftAcceleration,
  type RollState,
  rollAt,
  type WheelLift,
  type WheelLoads,
  wheelLoads,
} from "./transfer";
