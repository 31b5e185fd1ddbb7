export { tyreComputations } from "./catalogue";
export { type TyreDate, tyreDate } from "./date-code";
export {
  type CableDrive,
  cableTurnsPerWheelTurn,
  engineSpeedAt,
  type Gearing,
  roadSpeed,
  travelPerEngineAngle,
  wheelTurns,
} from "./gearing";
export { loadIndexRange, loadOfIndex } from "./load-index";
export {
  type RimFit,
  rollingCircumference,
  rollingFactors,
  sectionWidthOnRim,
  type TyreConstruction,
  type TyreSection,
  tyreConstructions,
  tyreOverallDiameter,
  tyreSectionHeight,
  tyreTableDiameter,
} from "./size";
export {
  isSpeedSymbol,
  loadShareAtSpeed,
  type SpeedSymbol,
  speedOfSymbol,
  speedSymbols,
} from "./speed-symbol";
export {
  allowedFactors,
  type Circumferences,
  highestReading,
  judgeReading,
  readingFactorAfter,
  type SpeedometerVerdict,
  speedometerTestSpeeds,
} from "./speedometer";
