export { type ChoiceInput, choiceAsked } from "./choice";
export type { Counts, Facets } from "./facet";
export type { Nearest } from "./nearest";
export {
  type CarChoice,
  type ListOrder,
  listOrders,
  type Shown,
} from "./policy";
export {
  chosenCarIds,
  foundCars,
  type RegisterList,
  type RegisterListInput,
  type RegisterListRow,
  registerList,
} from "./read";
