export {
  type AddPartNoteInput,
  addPartNote,
  addPartNoteInput,
  type WithdrawPartNoteInput,
  withdrawPartNote,
  withdrawPartNoteInput,
} from "./write";
