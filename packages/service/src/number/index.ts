export { type Argument, argumentsFor } from "./policy";
export {
  claimantIds,
  claimsOn,
  type DecisionLine,
  decisionsAbout,
  type FindingLine,
  type NumbersPage,
  numberedCars,
  numbersPage,
  type SetAsideLine,
} from "./read";
export {
  type DecideNumberInput,
  decideNumber,
  decideNumberInput,
  type SetAsideInput,
  setAside,
  setAsideInput,
  type TakeUpInput,
  takeUp,
  takeUpInput,
} from "./write";
