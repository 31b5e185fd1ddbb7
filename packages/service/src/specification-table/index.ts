export type { SpecificationImport } from "./policy";
export { specificationCsv } from "./read";
export { type ImportSpecificationInput, importSpecification, importSpecificationInput } from "./write";
