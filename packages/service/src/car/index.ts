export {
  type AssemblyCounts,
  type CarListInput,
  type CarListRow,
  deviatingCounts,
  findCar,
  listCars,
  sumOf,
} from "./read";
export { type CorrectCarInput, correctCar, correctCarInput } from "./write";
