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
