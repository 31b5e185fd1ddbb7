export { barComputations } from "./catalogue";
export {
  type Bar,
  type BarCompliance,
  type BarFlexibility,
  barCompliance,
} from "./compliance";
export {
  barDiameterForRate,
  barRate,
  barWheelRate,
  leverMotionRatio,
  rollRateOfWheelRate,
  wheelRateOfRollRate,
} from "./rate";
export {
  type BarSection,
  barPolarSecondMoment,
  barSecondMoment,
  barStiffnessRatio,
  torsionalStiffness,
} from "./section";
export { type BarStress, barStress } from "./stress";
