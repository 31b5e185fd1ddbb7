export type { SpreadLimits } from "./limits";
export {
  type ApartCar,
  characteristicOf,
  type Spread,
  type SpreadFigures,
  type SpreadInput,
  spread,
} from "./read";
