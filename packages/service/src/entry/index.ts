export { type EntryForm, type EntryTexts, entryForm } from "./read";
export { changeEntry, changeEntryInput, enterCar, enterCarInput } from "./write";
