export { archiveLimits } from "./policy";
export {
  linesOf,
  type OpenArchive,
  openArchiveFile,
  provenContent,
  wholeText,
} from "./read";
export { type FileToPack, fromDisk, fromText, packFiles } from "./write";
