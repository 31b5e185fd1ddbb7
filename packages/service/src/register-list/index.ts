export type { CarChoice, Shown } from "./policy";
export {
  chosenCarIds,
  type ListStatement,
  type RegisterList,
  type RegisterListInput,
  type RegisterListRow,
  registerList,
  registerListStatements,
} from "./read";
