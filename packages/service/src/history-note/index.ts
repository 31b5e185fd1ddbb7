export {
  type AddNoteInput,
  addNote,
  addNoteInput,
  type CorrectNoteInput,
  correctNote,
  correctNoteInput,
  type RemoveNoteInput,
  removeNote,
  removeNoteInput,
} from "./write";
