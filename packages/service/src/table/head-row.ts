import type { Table } from "./limit";

/** Cells of a sheet that are merged into one, rows and columns from 0, both ends included. */
export interface Block {
  readonly startRow: number;
  readonly startCol: number;
  readonly endRow: number;
  readonly endCol: number;
}

/** Rows above the headings that are passed over at most: a title, a date, the club's name. */
const ABOVE = 20;

const filled = (row: readonly string[]) => row.filter((cell) => cell !== "").length;

/** The first row with at least two cells: a title stands alone. A sheet of one column has its headings in the first. */
function headRowOf(cells: readonly (readonly string[])[]): number {
  const head = cells.slice(0, ABOVE).findIndex((row) => filled(row) >= 2);
  return head >= 0 ? head : cells.findIndex((row) => filled(row) > 0);
}

const isFigure = (text: string) => /\d/.test(text);

interface Head {
  readonly headings: readonly string[];
  /** First row below the headings. */
  readonly below: number;
}

/**
 * Headings of one row, or of two where one is merged over several columns: "Front camber" over "left" and "right" are
 * "Front camber left" and "Front camber right". Figures below a merged heading are values, not further headings.
 */
function headOf(cells: readonly (readonly string[])[], row: number, merges: readonly Block[]): Head {
  const top = [...(cells[row] ?? [])];
  const under = cells[row + 1] ?? [];
  const wide = merges.filter(
    ({ startRow, endRow, startCol, endCol }) => startRow === row && endRow === row && endCol > startCol,
  );
  const covered = wide.map(({ startCol, endCol }) =>
    Array.from({ length: endCol - startCol + 1 }, (_, offset) => startCol + offset),
  );
  const parts = covered.flat().map((column) => under[column] ?? "");
  const inTwo = parts.length > 0 && parts.some((part) => part !== "") && !parts.some(isFigure);
  for (const columns of covered) {
    const [first = 0] = columns;
    const heading = top[first] ?? "";
    for (const column of columns) top[column] = heading;
  }
  if (!inTwo) return { headings: top, below: row + 1 };
  const width = Math.max(top.length, under.length);
  const headings = Array.from({ length: width }, (_, column) =>
    [top[column] ?? "", under[column] ?? ""].filter((part) => part !== "").join(" "),
  );
  return { headings, below: row + 2 };
}

/** Splits a sheet's cells into headings and rows; nothing for an empty one. Rows keep their number in the sheet. */
export function withHeadings(
  cells: readonly (readonly string[])[],
  merges: readonly Block[],
): Pick<Table, "headings" | "rows"> | undefined {
  const row = headRowOf(cells);
  if (row < 0) return undefined;
  const { headings, below } = headOf(cells, row, merges);
  const last = headings.findLastIndex((heading) => heading !== "");
  const rows = cells
    .slice(below)
    .map((one, index) => ({ line: below + index + 1, cells: one }))
    .filter(({ cells: one }) => filled(one) > 0);
  const width = Math.max(last + 1, ...rows.slice(0, 1_000).map(({ cells: one }) => one.length));
  return { headings: headings.slice(0, width), rows };
}
