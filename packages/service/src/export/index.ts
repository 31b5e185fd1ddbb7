export type { ListColumn, ListExport, ListInput } from "./policy";
export { type ListName, listNames, openList } from "./read";
export {
  type ListFileInput,
  type ListFormat,
  listFile,
  listFormats,
  listMediaType,
  type WaitingFile,
  writeList,
} from "./write";
