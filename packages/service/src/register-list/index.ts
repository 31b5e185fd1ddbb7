export { type ChoiceInput, choiceAsked } from "./choice";
export type { Counts, Facets } from "./facet";
export type { Nearest } from "./nearest";
export { type ListOrder, listOrders, type ValueOrder } from "./order";
export type { CarChoice, Shown } from "./policy";
export {
  chosenCarIds,
  foundCars,
  type RegisterColumn,
  type RegisterList,
  type RegisterListInput,
  type RegisterListRow,
  registerList,
} from "./read";
