export {
  diameterForRate,
  type StudyAnswer,
  type StudyAxle,
  type StudyCar,
  type StudyResult,
  type StudySetting,
  settingNow,
  studyRoll,
  withoutBars,
} from "./answer";
export { readStudy, type StudyField, type StudyReading, studyFields } from "./field";
