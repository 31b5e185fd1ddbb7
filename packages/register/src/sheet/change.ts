import type { SheetModel } from "./sheet-model";

/** One thing that a sheet says otherwise than the record does now. */
export interface SheetChange {
  /** "Front camber, left", "Check: Measure front camber.", "Driver". */
  readonly what: string;
  /** What the sheet says; empty where it says nothing of it. */
  readonly printed: string;
  /** What the record says now; empty where it says nothing of it any more. */
  readonly now: string;
}

type Lines = ReadonlyMap<string, string>;

function entryLines({ event, entry, car }: SheetModel): Lines {
  return new Map([
    ["Running number", entry.runningNumber],
    ["Driver", entry.driver],
    ["Class", entry.className],
    ["Group", entry.group],
    ["Chassis", car.chassis],
    ["Event", [event.name, event.on, event.venue].filter((part) => part !== "").join(", ")],
    ["Rule set", event.ruleSet],
  ]);
}

function deviationLines({ deviations }: SheetModel): Lines {
  return new Map(
    deviations.map(({ label, side, actual, verdictText, specified }) => [
      side === undefined ? label : `${label}, ${side}`,
      [actual, verdictText, specified && `specified ${specified}`].filter(Boolean).join(", "),
    ]),
  );
}

function settingLines({ settings }: SheetModel): Lines {
  return new Map(
    settings.flatMap(({ label, limits, left, right, whole }) =>
      Object.entries({ left, right, whole }).flatMap(([side, reading]): [string, string][] =>
        reading === undefined
          ? []
          : [
              [
                `Setting ${label}${side === "whole" ? "" : `, ${side}`}`,
                [reading.text, limits].filter(Boolean).join(", limits "),
              ],
            ],
      ),
    ),
  );
}

function checkLines({ stations }: SheetModel): Lines {
  return new Map(
    stations.flatMap(({ checks }) =>
      checks.map(({ id, text, why }) => [`Check ${id}`, `${text} (${why})`] as const),
    ),
  );
}

/**
 * What the record says otherwise now than a sheet said when it was printed, in the order of the sheet. Both must be
 * of one layout; the words are compared, since they are what somebody reads and acts on.
 */
export function sheetChanges(printed: SheetModel, now: SheetModel): readonly SheetChange[] {
  return [entryLines, deviationLines, settingLines, checkLines].flatMap((linesOf) => {
    const [before, after] = [linesOf(printed), linesOf(now)];
    const keys = [...new Set([...before.keys(), ...after.keys()])];
    return keys.flatMap((what) => {
      const change = { what, printed: before.get(what) ?? "", now: after.get(what) ?? "" };
      return change.printed === change.now ? [] : [change];
    });
  });
}
