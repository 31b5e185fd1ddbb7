export { currentSpecifications } from "./read";
export {
  type AddSpecificationInput,
  addSpecification,
  type SourceInput,
  type SpecificationLine,
} from "./write";
