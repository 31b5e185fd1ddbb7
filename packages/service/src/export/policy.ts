import type { Condition } from "@trunnion/register";
import { type Cell, neutral } from "../neutral-cell";
import type { ListOrder, Shown } from "../register-list";

export type { Cell } from "../neutral-cell";

/** A column of a list. */
export interface ListColumn {
  readonly label: string;
  /** Unit of its numbers. */
  readonly unit?: string;
  /** Personal data: only for those allowed, and only where asked for. */
  readonly personal?: true;
}

/** A list ready to be written to a file in whatever format: columns, and rows as they come. */
export interface ListExport {
  /** Stem of the file's name. */
  readonly name: string;
  readonly title: string;
  readonly columns: readonly ListColumn[];
  /** One cell per column each. */
  readonly rows: AsyncIterable<readonly Cell[]>;
}

/** Which list, and of what. */
export interface ListInput {
  readonly list: string;
  /** Columns of personal data too, for those allowed. */
  readonly personalData: boolean;
  /** Of the list of cars: as on the register page. */
  readonly search?: string;
  readonly series?: string;
  readonly condition?: Condition;
  /** Name of a saved filter, own or shared; with a condition beside it both must hold. */
  readonly filter?: string;
  /** Cars that fit when left out; else those of which the record does not say. */
  readonly show?: Shown;
  /** Of the list as found: its order, and the keys of the characteristics shown beside. */
  readonly order?: ListOrder;
  readonly columns?: readonly string[];
  /** Reference of the car the list is of. */
  readonly car?: string;
  /** Short name of the event the list is of. */
  readonly event?: string;
}

/** A column, and what stands in it. */
export type Told<R> = ListColumn & { readonly of: (row: R) => Cell };

/** Leaves out what is personal, where it is not asked for. */
export function kept<R>(
  columns: readonly Told<R>[],
  personalData: boolean,
): { readonly columns: readonly ListColumn[]; readonly cells: (row: R) => readonly Cell[] } {
  const shown = columns.filter(({ personal }) => personalData || !personal);
  return { columns: shown, cells: (row) => shown.map(({ of }) => of(row)) };
}

/** One line of a CSV file by RFC 4180, with its end. */
export function csvLine(cells: readonly Cell[]): string {
  const written = cells.map((cell) => {
    const text = String(neutral(cell) ?? "");
    return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  });
  return `${written.join(",")}\r\n`;
}

/** Longest text a cell of an XLSX file may hold, in UTF-16 code units: the format's own limit. */
const XLSX_TEXT = 32_767;
const CUT = " … (cut here; the CSV file has all of it)";
// What XML 1.0 cannot hold: control characters but tab and line ends, halves of surrogate pairs, FFFE and FFFF.
const NOT_XML =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is meant
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** A cell as an XLSX file may hold it. */
export function xlsxCell(cell: Cell): Cell {
  const safe = neutral(cell);
  if (typeof safe !== "string") return safe;
  const text = safe.replace(NOT_XML, "\ufffd");
  return text.length <= XLSX_TEXT ? text : `${text.slice(0, XLSX_TEXT - CUT.length)}${CUT}`;
}

/** Heading of a column, with the unit of its numbers. */
export function headingOf({ label, unit }: ListColumn): string {
  return unit === undefined ? label : `${label} [${unit}]`;
}
