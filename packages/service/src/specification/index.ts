export { currentSpecifications, specificationAt } from "./read";
export {
  type AddSpecificationInput,
  addSpecification,
  type SourceInput,
  type SpecificationLine,
} from "./write";
