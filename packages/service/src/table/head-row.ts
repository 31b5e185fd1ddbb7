import type { Table, TableRow } from "./limit";

/** Cells of a sheet that are merged into one, rows and columns from 0, both ends included. */
export interface Block {
  readonly startRow: number;
  readonly startCol: number;
  readonly endRow: number;
  readonly endCol: number;
}

/** Rows above the headings that are passed over at most: a title, a date, the club's name. */
const ABOVE = 20;
/** Characters told of a line that is passed over. */
const TOLD = 200;

const filled = (row: readonly string[]) => row.filter((cell) => cell !== "");
const isFigure = (text: string) => /\d/.test(text);

/** Headings are words: a row of which more than half has figures in it holds values. */
const isWords = (row: readonly string[]) => filled(row).filter(isFigure).length * 2 <= filled(row).length;

/**
 * The first row with at least two cells, unless these are values: a title stands alone. A table of one column has its
 * headings in the first.
 */
function headRowOf(rows: readonly TableRow[]): number {
  const near = rows.slice(0, ABOVE);
  const first = near.findIndex(({ cells }) => filled(cells).length >= 2);
  const found = near[first];
  if (found && isWords(found.cells)) return first;
  return rows.findIndex(({ cells }) => filled(cells).length > 0);
}

interface Head {
  readonly headings: readonly string[];
  /** First row below the headings. */
  readonly below: number;
}

/** Columns that a merged heading stands over, each with all of its own. */
function covered(merges: readonly Block[], row: number): readonly (readonly number[])[] {
  return merges
    .filter(
      ({ startRow, endRow, startCol, endCol }) => startRow === row && endRow === row && endCol > startCol,
    )
    .map(({ startCol, endCol }) =>
      Array.from({ length: endCol - startCol + 1 }, (_, offset) => startCol + offset),
    );
}

/**
 * The same of a table without merged cells, which it was perhaps saved from: a heading stands in the first of its columns,
 * and the others, empty above, have a word of their own in the line below.
 */
function gaps(top: readonly string[], under: readonly string[]): readonly (readonly number[])[] {
  const groups: number[][] = [];
  for (const [column, word] of under.entries()) {
    const heading = top[column] ?? "";
    const group = groups.at(-1);
    if (heading !== "") groups.push([column]);
    else if (word !== "" && group?.at(-1) === column - 1) group.push(column);
    else groups.push([]);
  }
  return groups.filter(({ length }) => length > 1);
}

/**
 * Headings of one row, or of two where one stands over several columns: "Front camber" over "left" and "right" are "Front
 * camber left" and "Front camber right". Figures below such a heading are values, not further headings.
 */
function headOf(rows: readonly TableRow[], row: number, merges: readonly Block[]): Head {
  const top = [...(rows[row]?.cells ?? [])];
  const under = rows[row + 1]?.cells ?? [];
  const merged = covered(merges, row);
  const loose = merges.length > 0 || filled(under).some(isFigure) ? [] : gaps(top, under);
  const wide = [...merged, ...loose];
  const parts = wide.flat().map((column) => under[column] ?? "");
  const inTwo = parts.length > 0 && parts.some((part) => part !== "") && !parts.some(isFigure);
  for (const columns of wide) {
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

export interface HeadInput {
  readonly merges?: readonly Block[];
  /** Line of the headings, where somebody said which. */
  readonly head?: number;
}

/**
 * Splits a table's rows into headings and what is below, and tells what stands above and is passed over; nothing for an
 * empty one, or where the line said to be the headings has no cell. Empty rows are left out, the others keep their line.
 */
export function withHeadings(
  rows: readonly TableRow[],
  { merges = [], head }: HeadInput = {},
): Pick<Table, "headings" | "rows" | "head" | "above"> | undefined {
  const row = head === undefined ? headRowOf(rows) : rows.findIndex(({ line }) => line === head);
  const found = rows[row];
  if (!found || filled(found.cells).length === 0) return undefined;
  const { headings, below } = headOf(rows, row, merges);
  const last = headings.findLastIndex((heading) => heading !== "");
  const kept = rows.slice(below).filter(({ cells }) => filled(cells).length > 0);
  const width = Math.max(last + 1, ...kept.slice(0, 1_000).map(({ cells }) => cells.length));
  const above = rows
    .slice(0, row)
    .map(({ cells }) => filled(cells).join(" · ").slice(0, TOLD))
    .filter((text) => text !== "");
  return { headings: headings.slice(0, width), rows: kept, head: found.line, above: above.slice(0, ABOVE) };
}
