export { springComputations } from "./catalogue";
export {
  activeCoils,
  activeCoilsForRate,
  type Coil,
  type CoilEnds,
  coilEnds,
  coilRate,
  coilStress,
  directShearFactor,
  solidHeight,
  springForce,
  springIndex,
  wahlFactor,
} from "./coil";
export { ratesInParallel, ratesInSeries } from "./combine";
export {
  criticalDamping,
  type DampedCorner,
  type DamperPoint,
  damperForce,
  dampingCoefficient,
  dampingRatio,
} from "./damping";
export {
  type HeightChangeInput,
  loadedLength,
  rideHeightChange,
  type SpringFit,
  seatLiftForHeight,
  springForceOfWheelLoad,
} from "./height";
export { type LeafSpring, type LeafStress, leafRate, leafStress } from "./leaf";
export { carbonSteel, type ElasticModuli } from "./material";
export { type TorsionBar, torsionBarRate, torsionBarTwist } from "./torsion-bar";
export {
  frequencyOfDeflection,
  naturalFrequency,
  rateForFrequency,
  rideRate,
  type SpringMounting,
  springRateForWheelRate,
  staticDeflection,
  type WheelHopInput,
  wheelHopFrequency,
  wheelRate,
} from "./wheel";
