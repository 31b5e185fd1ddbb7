export type { SpecificationImport } from "./policy";
export { specificationCsv } from "./read";
export {
  type ImportSpecificationInput,
  importSpecification,
  importSpecificationInput,
  SPECIFICATION_FILE_LIMIT,
} from "./write";
