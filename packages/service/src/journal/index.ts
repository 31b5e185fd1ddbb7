export {
  type CarJournalPage,
  CHAIN_LIMIT,
  type ChainBreak,
  type ChainReport,
  carJournal,
  checkJournal,
  type JournalEntryPage,
  type JournalItem,
  type JournalPage,
  type JournalPerson,
  type JournalQuery,
  journalEntry,
  journalPage,
  verifyJournal,
} from "./read";
export { type JournalLine, writeJournal } from "./write";
