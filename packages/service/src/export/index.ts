export type { ListColumn, ListExport } from "./policy";
export { type ListInput, type ListName, listNames, openList } from "./read";
export {
  type ListFileInput,
  type ListFormat,
  listFile,
  listFormats,
  listMediaType,
  type WaitingFile,
  writeList,
} from "./write";
