export { type SettingSheetForm, settingSheetForm } from "./read";
export {
  type HandInSheetInput,
  handInSheet,
  handInSheetInput,
  readPastedSheet,
  readSheetTableInput,
} from "./write";
