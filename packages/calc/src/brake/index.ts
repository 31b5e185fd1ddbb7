export {
  type Axles,
  adhesionUsed,
  axleLoadsUnderBraking,
  type BrakedCar,
  criticalDeceleration,
  type FirstLock,
  firstLock,
  idealForceShares,
  idealFrontShare,
} from "./balance";
export { brakeComputations } from "./catalogue";
export { type DiscBrake, discTorque, discTorquePerPressure, evenPressureRadius, padRadius } from "./disc";
export {
  type DrumArrangement,
  type DrumBrake,
  drumBrakeFactor,
  drumTorque,
  drumTorquePerPressure,
  type Shoe,
  type ShoeKind,
  shoeFactor,
} from "./drum";
export {
  brakingEnergy,
  coolingTimeOf,
  type HeatSink,
  heatPerBrake,
  type StopSeries,
  seriesTemperatures,
  settledTemperature,
  stopLimit,
  temperatureRise,
} from "./heat";
export {
  type LineInput,
  linePressure,
  pedalTravel,
  pistonArea,
  type RearValve,
  type Servo,
  servoInput,
  servoOutput,
  vacuumAssist,
  valveOutput,
} from "./hydraulic";
export {
  type BrakeTest,
  brakeTests,
  leastDecelerationAtAdhesion,
  regulationDeceleration,
  regulationDistance,
} from "./regulation";
export { meanFullyDevelopedDeceleration, type Stop, type StopResult, stoppingDistance } from "./stop";
export {
  type AxleBrakes,
  type BrakedStop,
  type BrakeSystem,
  type Braking,
  balanceBar,
  brakedStop,
  brakingAt,
  type LockPoint,
  lockPoint,
  pedalForceOf,
  rodForceOf,
  tandemCylinder,
} from "./system";
