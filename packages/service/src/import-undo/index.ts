export { type UndoReport, undoImport } from "./write";
