export { type ComparisonInput, comparisonInput } from "./policy";
export { type ComparedCar, type ComparisonPage, comparisonPage } from "./read";
