export { judgedSql, type PartTexts, partTexts } from "./policy";
export {
  type DependentCar,
  dependentCars,
  findPart,
  type ListedPart,
  listedParts,
  type PartNeed,
  type PartUse,
  partLimit,
  partNeeds,
  partUses,
} from "./read";
export {
  type AddPartInput,
  addPart,
  addPartInput,
  type ChangePartInput,
  changePart,
  changePartInput,
  type WithdrawPartInput,
  withdrawPart,
  withdrawPartInput,
} from "./write";
