export { type EntryCheck, type EntryPage, entryPage } from "./read";
