export {
  type Completeness,
  type MonthSurvival,
  type SeriesSurvival,
  type Survival,
  survival,
  type ThinRecord,
  type Whom,
} from "./read";
