export type { Repeats, SeriesSpread } from "./policy";
export {
  type CornerSigns,
  type PlotPoint,
  type SettingPlot,
  type SettingSheetPage,
  type SheetLine,
  type SheetPlace,
  type SheetRow,
  settingSheetPage,
  type WheelSigns,
} from "./read";
