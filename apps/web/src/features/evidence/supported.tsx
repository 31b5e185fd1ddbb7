import type { CarPage } from "@trunnion/api";
import type { ReactNode } from "react";
import type { ValueRow } from "../../components/value-table";
import type { AssemblyState } from "../car/assembly-section";
import type { HistoryLine } from "../car/history-section";
import type { CornerReading, SettingGroup } from "../car/setting-section";
import { SupportMark } from "./support-mark";

/** What is shown of a car, each value with the pictures that support it. */
export interface Supported {
  rows(rows: readonly ValueRow[]): readonly ValueRow[];
  assemblies(assemblies: readonly AssemblyState[]): readonly AssemblyState[];
  settings(groups: readonly SettingGroup[]): readonly SettingGroup[];
  history(lines: readonly HistoryLine[]): readonly HistoryLine[];
}

const corners = ["left", "right", "whole"] as const;

/** Puts the pictures that support each value beside it; values that nothing supports stay as they are. */
export function supportedBy(club: string, support: CarPage["support"]): Supported {
  const mark = (key: string): { readonly support?: ReactNode } => {
    const pieces = support[key];
    return pieces === undefined ? {} : { support: <SupportMark club={club} support={pieces} /> };
  };
  // Of a value that nothing is known of, no picture is shown: it would be one of what is specified.
  const rows: Supported["rows"] = (all) =>
    all.map((row) => (row.actual === "" ? row : { ...row, ...mark(row.key) }));
  const corner = (reading: CornerReading | undefined, key: string) =>
    reading === undefined || reading.text === "" ? reading : { ...reading, ...mark(key) };
  return {
    rows,
    assemblies: (all) => all.map((one) => ({ ...one, rows: rows(one.rows) })),
    history: (lines) => lines.map((line) => ({ ...line, ...mark(line.key) })),
    settings: (groups) =>
      groups.map((group) => ({
        ...group,
        settings: group.settings.map((setting) => {
          const marked = corners.flatMap((side) => {
            const reading = corner(setting[side], `${setting.key} ${side}`);
            return reading === undefined ? [] : [[side, reading] as const];
          });
          return { ...setting, ...Object.fromEntries(marked) };
        }),
      })),
  };
}
