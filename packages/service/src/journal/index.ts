export { type ChainBreak, verifyJournal } from "./read";
export { type JournalLine, writeJournal } from "./write";
