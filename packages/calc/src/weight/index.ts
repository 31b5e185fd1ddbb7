export { ballastMass, ballastPlace, frontShareAt, type PlacedMass, together } from "./ballast";
export {
  type BallastPlace,
  type BallastTarget,
  cornersWithBallast,
  frontRollShare,
  placeForTarget,
  type SprungPlan,
} from "./ballast-corner";
export { weightComputations } from "./catalogue";
export {
  type CgHeight,
  centreInPlan,
  cgHeight,
  cgHeightUncertainty,
  type RaisedAxle,
  shortcutAboveHubs,
  type WeighingUncertainty,
  type WheelPlan,
} from "./centre";
export {
  type CornerMasses,
  type CornerName,
  type CornerSums,
  cornerNames,
  cornerSums,
  crossShareChange,
  unwarpedCorners,
} from "./corner";
export { seatLiftForCross, seatLiftLoads, type WarpCar } from "./cross";
