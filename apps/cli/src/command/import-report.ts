import type { ImportReport, UndoReport } from "@trunnion/service";

const counted = (count: number, one: string, more = `${one}s`) => `${count} ${count === 1 ? one : more}`;

/** What a reading-in did, in lines for people: what was left out and why, what to look at, then the count. */
export function importLines(report: ImportReport): readonly string[] {
  const {
    carsAdded,
    carsChanged,
    carsUnchanged,
    refusedRows,
    doubtfulRows,
    unknownHeadings,
    derivedHeadings,
  } = report;
  const were = (count: number) => (report.dryRun ? "would be" : count === 1 ? "was" : "were");
  const leftOut = new Set(refusedRows.map(({ line }) => line)).size;
  return [
    ...refusedRows.map(
      ({ line, column, found, expected }) =>
        `line ${line}, column ${column}: found ${found}; expected ${expected}`,
    ),
    ...doubtfulRows.map(({ line, column, found, text }) =>
      [
        `line ${line}`,
        ...(column === undefined ? [] : [`column ${column}`]),
        ...(found === undefined || text.includes(found) ? [] : [`found ${found}`]),
        `taken, but look: ${text}`,
      ].join(", "),
    ),
    ...(unknownHeadings.length === 0
      ? []
      : [`no such column here, kept as remarks: ${unknownHeadings.join(", ")}`]),
    ...(derivedHeadings.length === 0
      ? []
      : [`not read, since they are worked out from the record: ${derivedHeadings.join(", ")}`]),
    `${report.file}: ${counted(report.rowsRead, "row")} read; ${counted(carsAdded, "car")} ${were(carsAdded)} added, ` +
      `${carsChanged} changed, ${carsUnchanged} stayed as they are; ${counted(leftOut, "row")} left out.`,
    ...(report.run === null ? [] : [`run ${report.run}: "import --undo ${report.run}" takes it back`]),
  ];
}

/** What undoing an import did, in a line for people. */
export function undoLines({ file, carsRemoved, carsRestored }: UndoReport): readonly string[] {
  const restored = `${counted(carsRestored, "car")} ${carsRestored === 1 ? "is as it was" : "are as they were"}`;
  return [
    `The import of ${file} is undone: ${counted(carsRemoved, "car")} that it had added ${carsRemoved === 1 ? "is" : "are"} gone, ${restored}.`,
  ];
}
