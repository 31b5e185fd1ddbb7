export type { Repeats, SeriesSpread } from "./policy";
export {
  type CornerSigns,
  type PlotPoint,
  type SettingPlot,
  type SettingSheetForm,
  type SettingSheetPage,
  type SheetLine,
  type SheetPlace,
  type SheetRow,
  settingSheetForm,
  settingSheetPage,
  type WheelSigns,
} from "./read";
