import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic, Side } from "../characteristic/characteristic";
import { foldName } from "../characteristic/fold-name";
import { sheetSides } from "./row";

/** One cell of a table that was taken for a reading. */
export interface SheetTableCell {
  readonly characteristic: string;
  readonly side: Side;
  readonly entered: string;
}

/** What a table of readings says; a cell that nobody can place is told, never dropped in silence. */
export interface SheetTableReading {
  readonly readings: readonly SheetTableCell[];
  readonly problems: readonly string[];
}

/** Most rows of one table: a setting sheet has some dozens. */
export const sheetTableRows = 400;

const sideNames: ReadonlyMap<string, Side> = new Map(
  (
    [
      ["left", ["left", "l", "lh", "nearside", "n/s", "ns"]],
      ["right", ["right", "r", "rh", "offside", "o/s", "os"]],
      ["whole", ["whole", "both", "reading", "value", "car", "total"]],
    ] as const
  ).flatMap(([side, names]) => names.map((name) => [foldName(name), side] as const)),
);

const sideNamed = (text: string): Side | undefined => sideNames.get(foldName(text));

/** "Front camber left", "Front camber, nearside": a name with its side behind it. */
function placed(name: string, book: CharacteristicBook): { one: Characteristic; side?: Side } | undefined {
  const whole = book.named(name) ?? book.find(name.trim());
  if (whole) return { one: whole };
  const [, stem = "", last = ""] = /^(.*?)[\s,(]+([^\s,()]+)\)?$/.exec(name.trim()) ?? [];
  const side = sideNamed(last);
  const one = book.named(stem);
  return one === undefined || side === undefined ? undefined : { one, side };
}

interface Found {
  readonly readings: SheetTableCell[];
  readonly problems: string[];
}

function take(found: Found, { one, side }: { one: Characteristic; side?: Side }, entered: string): void {
  if (entered === "") return;
  const known = sheetSides(one);
  const sides = side === undefined || side === "whole" ? known : known.filter((each) => each === side);
  if (sides.length === 0) {
    found.problems.push(`${one.label} has no sides: "${entered}" cannot be its ${side}.`);
    return;
  }
  for (const each of sides) found.readings.push({ characteristic: one.key, side: each, entered });
}

/** The table's first row names the sides: one characteristic a row. */
function down(
  rows: readonly (readonly string[])[],
  sides: readonly (Side | undefined)[],
  found: Found,
  book: CharacteristicBook,
): void {
  for (const [name = "", ...cells] of rows) {
    if (name.trim() === "") continue;
    const at = placed(name, book);
    if (!at) {
      found.problems.push(`"${name.trim().slice(0, 80)}" is no setting this program knows.`);
      continue;
    }
    cells.forEach((cell, index) => {
      const side = sides[index + 1] ?? at.side;
      if (cell.trim() !== "")
        take(found, { one: at.one, ...(side === undefined ? {} : { side }) }, cell.trim());
    });
  }
}

/** The table's first row names what was read: one occasion, one row of readings. */
function across(
  [head = [], ...rows]: readonly (readonly string[])[],
  found: Found,
  book: CharacteristicBook,
): void {
  head.forEach((name, index) => {
    if (name.trim() === "") return;
    const at = placed(name, book);
    const entered = rows.flatMap((row) => (row[index]?.trim() ? [row[index].trim()] : [])).join("; ");
    if (at) take(found, at, entered);
    else found.problems.push(`Column "${name.trim().slice(0, 80)}" is no setting this program knows.`);
  });
}

/**
 * Takes a table of readings apart. Three shapes are understood: a head that names the sides with one setting a row
 * ("Setting; Left; Right"), rows of a setting with its side and the reading ("Front camber left; -0°30'"), and a head
 * that names the settings with the readings below, several rows being repeats.
 */
export function readSheetTable(
  rows: readonly (readonly string[])[],
  book: CharacteristicBook,
): SheetTableReading {
  const found: Found = { readings: [], problems: [] };
  const filled = rows.filter((row) => row.some((cell) => cell.trim() !== ""));
  if (filled.length > sheetTableRows) {
    found.problems.push(
      `The table has ${filled.length} rows; a setting sheet has at most ${sheetTableRows}.`,
    );
    return found;
  }
  const [head = [], ...rest] = filled;
  const sides = head.map(sideNamed);
  const headNames = head.filter((cell) => placed(cell, book) !== undefined).length;
  if (sides.slice(1).some((side) => side !== undefined) && !placed(head[0] ?? "", book))
    down(rest, sides, found, book);
  else if (
    headNames > 1 ||
    (headNames === 1 && rest.length > 0 && !placed(rest[0]?.[0] ?? "", book) && head.length === 1)
  )
    across(filled, found, book);
  else down(filled, [], found, book);
  return found;
}
