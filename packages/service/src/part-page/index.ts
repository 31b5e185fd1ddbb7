export { type Mismatch, mismatchesOf, type StandIn, standInsFor } from "./policy";
export {
  carMixes,
  type PartForm,
  type PartNoteLine,
  type PartPage,
  type PartsInput,
  type PartsPage,
  partForm,
  partPage,
  partsPage,
} from "./read";
