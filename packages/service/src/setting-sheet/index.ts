export type { CornerSigns, Repeats, SeriesSpread, WheelSigns } from "./policy";
export {
  type PlotPoint,
  type SettingPlot,
  type SettingSheetPage,
  type SheetLine,
  type SheetPlace,
  type SheetRow,
  settingSheetPage,
} from "./read";
