export { fastenerComputations } from "./catalogue";
export {
  type Engagement,
  engagementByRule,
  engagementNeeded,
  pitchLineArea,
  type StripAreas,
  stripArea,
  stripAreas,
  stripShare,
  type TappedMaterial,
  tappedMaterials,
} from "./engagement";
export { type JointForces, type JointLoad, jointConstant, jointForces } from "./joint";
export {
  type BoltFit,
  type BoltStackUp,
  boltFit,
  type LengthSeries,
  leastBoltLength,
  nominalLength,
  usualThreadLength,
} from "./length";
export {
  type SpacerStack,
  type SpacerStackResult,
  spacerStack,
  stackOpeningForce,
  threadEnduranceAmplitude,
  yieldForce,
} from "./spacer-stack";
export {
  type BoltLoads,
  type BoltStrength,
  boltLoads,
  type ShearCapacity,
  shearCapacity,
  shearShare,
  shearYieldShare,
} from "./strength";
export {
  halfFlankAngle,
  nutMinorDiameter,
  pitchDiameter,
  rootDiameter,
  stressArea,
  stressDiameter,
  type ThreadForm,
  type ThreadSystem,
} from "./thread-form";
export { ordinaryFit, type ThreadLimits } from "./thread-limit";
export { standardThreads } from "./thread-list";
export {
  accumulatedPitchError,
  candidateLimit,
  type HandedThread,
  type LookAlike,
  lookAlikes,
  type PairVerdict,
  type ThreadPair,
  threadPair,
} from "./thread-pair";
export {
  nutFactorOf,
  nutFactors,
  preloadByNutFactor,
  type TighteningFriction,
  threadTorquePerForce,
  tighteningStress,
  torqueByNutFactor,
  torquePerForce,
  usualHeadDiameter,
} from "./torque";
