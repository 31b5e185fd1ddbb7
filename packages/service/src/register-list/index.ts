export type { CarChoice, Shown } from "./policy";
export {
  chosenCarIds,
  type RegisterList,
  type RegisterListInput,
  type RegisterListRow,
  registerList,
} from "./read";
