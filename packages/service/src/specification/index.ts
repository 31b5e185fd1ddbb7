export { currentSpecifications, specificationAt, specificationOf, type VersionReference } from "./read";
export {
  type AddSpecificationInput,
  addSpecification,
  type MakeCurrentInput,
  makeCurrent,
  makeCurrentInput,
  type SourceInput,
  type SpecificationLine,
} from "./write";
