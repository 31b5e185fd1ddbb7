export { type SettingSheetForm, settingSheetForm } from "./read";
