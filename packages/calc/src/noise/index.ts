export { noiseComputations } from "./catalogue";
export {
  backgroundCorrection,
  type DistanceInput,
  distanceDrop,
  leastBackgroundMargin,
  levelAtDistance,
  levelWithoutBackground,
  sumOfLevels,
  wantedBackgroundMargin,
} from "./level";
export {
  judgeLevel,
  type LevelUncertaintyInput,
  type LevelVerdictInput,
  levelUncertainty,
} from "./margin";
export { stationaryTestSpeed } from "./test-speed";
