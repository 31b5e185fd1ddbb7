export type { Counts, Facets } from "./facet";
export {
  type CarChoice,
  decadeNotKnown,
  type FacetPick,
  type ListOrder,
  listOrders,
  type Shown,
} from "./policy";
export {
  chosenCarIds,
  type RegisterList,
  type RegisterListInput,
  type RegisterListRow,
  registerList,
} from "./read";
