export { changedFields, differencesOf, readDate, type WantedField } from "./policy";
export {
  type AssemblyCounts,
  deviatingCounts,
  findCar,
  openCar,
  sumOf,
} from "./read";
export {
  type AddCarInput,
  addCar,
  addCarInput,
  type CarEdit,
  type CorrectCarInput,
  correctCar,
  correctCarInput,
  editCar,
  type FileCarInput,
  fileCar,
  fileCarInput,
  type OpenedForm,
  type SetOptionsInput,
  setOptions,
  setOptionsInput,
} from "./write";
