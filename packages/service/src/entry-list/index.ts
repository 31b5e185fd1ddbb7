export {
  type EntryRemark,
  type ListedCar,
  type ListedEntry,
  type ReadEntryList,
  readEntryList,
} from "./read";
export { takeEntryList, takeEntryListInput } from "./write";
