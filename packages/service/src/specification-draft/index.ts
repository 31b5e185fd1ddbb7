export { type DraftEntry, draftEntry } from "./read";
export {
  type DiscardDraftInput,
  discardDraft,
  discardDraftInput,
  type PutEntryInput,
  putEntry,
  putEntryInput,
  type RemoveEntryInput,
  removeEntry,
  removeEntryInput,
  type StartDraftInput,
  startDraft,
  startDraftInput,
} from "./write";
