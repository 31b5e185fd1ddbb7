import { describe, expect, test } from "vitest";
import { importLines, undoLines } from "./import-report";

const report = {
  file: "cars.csv",
  sha256: "0".repeat(64),
  dryRun: false,
  rowsRead: 4,
  carsAdded: 2,
  carsChanged: 1,
  carsUnchanged: 0,
  refusedRows: [],
  doubtfulRows: [],
  unknownHeadings: [],
  derivedHeadings: [],
  run: null,
};

describe("what a reading-in did", () => {
  test("is one line where there is nothing to say", () => {
    expect(importLines(report)).toEqual([
      "cars.csv: 4 rows read; 2 cars were added, 1 changed, 0 stayed as they are; 0 rows left out.",
    ]);
  });

  test("is told as what would be done, where nothing was", () => {
    expect(importLines({ ...report, dryRun: true, rowsRead: 1, carsAdded: 1 }).at(-1)).toBe(
      "cars.csv: 1 row read; 1 car would be added, 1 changed, 0 stayed as they are; 0 rows left out.",
    );
  });

  test("names every cell by line and column, and counts a row once however many of its cells are wrong", () => {
    const cell = { line: 3, column: 'C "Built"', found: "once", expected: "a date such as 1971" };
    const refusedRows = [cell, { ...cell, column: 'D "now: front camber"', found: "95°" }];
    const lines = importLines({ ...report, refusedRows });
    expect(lines).toHaveLength(3);
    expect(lines[0]).toBe('line 3, column C "Built": found once; expected a date such as 1971');
    expect(lines[1]).toContain("found 95°");
    expect(lines[2]).toMatch(/; 1 row left out\.$/);
  });

  test("says what to look at, and what went to the remarks", () => {
    const doubtfulRows = [{ line: 5, text: "chassis X fits no series of this club" }];
    expect(importLines({ ...report, doubtfulRows, unknownHeadings: ["Club magazine", "column Q"] })).toEqual([
      "line 5, taken, but look: chassis X fits no series of this club",
      "no such column here, kept as remarks: Club magazine, column Q",
      expect.stringMatching(/^cars\.csv: 4 rows read/),
    ]);
  });

  test("says which columns were not read, since they follow from the record", () => {
    expect(importLines({ ...report, derivedHeadings: ["Characteristics compared"] })[0]).toBe(
      "not read, since they are worked out from the record: Characteristics compared",
    );
  });

  test("names the run by which it can be undone, where anything was written", () => {
    expect(importLines({ ...report, run: "0199-x" }).at(-1)).toBe(
      'run 0199-x: "import --undo 0199-x" takes it back',
    );
  });

  test("undone is one line", () => {
    expect(undoLines({ run: "r", file: "cars.csv", carsRemoved: 1, carsRestored: 2 })).toEqual([
      "The import of cars.csv is undone: 1 car that it had added is gone, 2 cars are as they were.",
    ]);
  });
});
