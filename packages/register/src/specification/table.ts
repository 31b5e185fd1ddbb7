import type { CharacteristicBook } from "../characteristic/book";
import { foldName } from "../characteristic/fold-name";
import { columnLetter } from "../register-file/heading";
import { guardCell, joinCell, splitCell, unguardCell } from "./cell";
import {
  type AlternativeText,
  blankEntry,
  type EntryText,
  entryText,
  specificationLimits,
} from "./entry-text";
import { type EntryReading, readEntryText } from "./read-entry";
import { type SourceKindName, sourceKindNames, sourceKindWords } from "./source-kind";
import {
  type AlternativeRole,
  alternativeRoles,
  noSourceTitle,
  type SpecificationEntry,
} from "./specification";
import {
  type AlternativePart,
  alternativeParts,
  columnNamed,
  headingOf,
  type PlainColumn,
  type SpecificationColumn,
} from "./table-column";

/** A source as a table names it. */
export interface TableSource {
  readonly title: string;
  /** Missing where the table does not say; one that is new is then filed as `other`. */
  readonly kind?: SourceKindName;
  readonly edition?: string;
}

/** What is wrong with one cell of a table. */
export interface TableProblem {
  /** Line of the file; the headings are line 1. */
  readonly line: number;
  /** Letter of the column, as a spreadsheet shows it; empty where the row lacks it. */
  readonly column: string;
  readonly heading: string;
  readonly found: string;
  readonly message: string;
}

/** A table as the file reader gives it. */
export interface CellTable {
  readonly headings: readonly string[];
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

/** What a table of a specification says. */
export interface SpecificationTable {
  readonly entries: readonly SpecificationEntry[];
  /** Sources that its entries rest on, each once. */
  readonly sources: readonly TableSource[];
  readonly problems: readonly TableProblem[];
}

type Cells = Readonly<Partial<Record<SpecificationColumn, string>>>;

const mainColumns = [
  "characteristic",
  "label",
  "side",
  "nominal",
  "lower",
  "upper",
  "serialFrom",
  "serialTo",
  "builtFrom",
  "builtTo",
  "option",
  "periodOption.value",
  "acceptedSubstitute.value",
  "serviceReplacement.value",
  "source",
  "locus",
  "trust",
  "note",
] as const satisfies readonly SpecificationColumn[];

/** Written only where some entry needs them. */
const furtherColumns: readonly SpecificationColumn[] = [
  ...alternativeRoles.flatMap((role) =>
    alternativeParts.flatMap((part) => (part === "value" ? [] : [`${role}.${part}` as const])),
  ),
  "sourceKind",
  "sourceEdition",
];

function alternativeCells(alternatives: readonly AlternativeText[], role: AlternativeRole): Cells {
  const own = alternatives.filter((one) => one.role === role);
  return Object.fromEntries(
    alternativeParts.map((part) => [`${role}.${part}`, joinCell(own.map((one) => one[part]))]),
  );
}

function cellsOf(
  entry: SpecificationEntry,
  book: CharacteristicBook,
  source: TableSource | undefined,
): Cells {
  const { alternatives, ...plain } = entryText(entry, book);
  return {
    ...plain,
    ...Object.assign({}, ...alternativeRoles.map((role) => alternativeCells(alternatives, role))),
    label: book.find(entry.characteristic)?.label ?? "",
    sourceKind: source?.kind === undefined ? "" : sourceKindWords[source.kind],
    sourceEdition: source?.edition ?? "",
  };
}

/**
 * A specification as a table that {@link readSpecificationTable} reads back to the same, into this club or another.
 * Cells a spreadsheet would take for a formula begin with an apostrophe.
 *
 * @param sources what the club knows of the sources, so that they arrive as what they are
 */
export function specificationTable(
  entries: readonly SpecificationEntry[],
  book: CharacteristicBook,
  sources: readonly TableSource[] = [],
): { readonly headings: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const known = new Map(sources.map((source) => [source.title, source]));
  const rows = entries.map((entry) => cellsOf(entry, book, known.get(entry.source.title)));
  const columns = [
    ...mainColumns,
    ...furtherColumns.filter((column) => rows.some((cells) => (cells[column] ?? "") !== "")),
  ];
  return {
    headings: columns.map(headingOf),
    rows: rows.map((cells) => columns.map((column) => guardCell(cells[column] ?? ""))),
  };
}

/** What is wrong with a table's headings; `undefined` when nothing is. */
export type HeadingProblem =
  | { readonly kind: "missing"; readonly wanted: readonly string[] }
  | { readonly kind: "twice"; readonly heading: string; readonly columns: readonly string[] }
  | { readonly kind: "unknown"; readonly heading: string };

/** Holds a table's headings against the columns of a specification. A column without a heading must be empty all down. */
export function headingProblem({ headings, rows }: CellTable): HeadingProblem | undefined {
  const columns = headings.map(columnNamed);
  if (!columns.includes("characteristic")) {
    return { kind: "missing", wanted: [headingOf("characteristic")] };
  }
  for (const [index, heading] of headings.entries()) {
    const column = columns[index];
    const isEmpty = heading.trim() === "" && rows.every(({ cells }) => (cells[index] ?? "") === "");
    if (column === undefined && !isEmpty) return { kind: "unknown", heading };
    const first = column === undefined ? index : columns.indexOf(column);
    if (first < index) {
      return { kind: "twice", heading, columns: [first, index].map(columnLetter) };
    }
  }
  return undefined;
}

class RowReader {
  readonly problems: TableProblem[] = [];
  constructor(
    readonly columns: readonly (SpecificationColumn | undefined)[],
    readonly headings: readonly string[],
    readonly row: CellTable["rows"][number],
  ) {}

  cell(column: SpecificationColumn): string {
    const index = this.columns.indexOf(column);
    return index < 0 ? "" : unguardCell(this.row.cells[index] ?? "").trim();
  }

  add(column: SpecificationColumn, message: string): void {
    const index = this.columns.indexOf(column);
    const place = index < 0 ? { column: "", heading: headingOf(column) } : this.place(index);
    this.problems.push({ line: this.row.line, ...place, found: this.cell(column), message });
  }

  place(index: number) {
    return { column: columnLetter(index), heading: this.headings[index] ?? "" };
  }

  /** Texts of the columns of one role, side by side. */
  alternatives(role: AlternativeRole): readonly AlternativeText[] {
    const values = splitCell(this.cell(`${role}.value`));
    const parts = (part: AlternativePart) => {
      const texts = splitCell(this.cell(`${role}.${part}`));
      if (texts.length > values.length) {
        const wanted = `${texts.length} for ${values.length === 0 ? "no" : values.length} ${values.length === 1 ? "value" : "values"}`;
        this.add(`${role}.${part}`, `${wanted}; write one for each value, parted by strokes`);
      }
      return texts;
    };
    const [notes, sources, pages, trust] = [parts("note"), parts("source"), parts("locus"), parts("trust")];
    return values.map((value, index) => ({
      role,
      value,
      note: notes[index] ?? "",
      source: sources[index] ?? "",
      locus: pages[index] ?? "",
      trust: trust[index] ?? "",
    }));
  }

  text(): EntryText {
    const { alternatives: _, ...plain } = blankEntry;
    const names = Object.keys(plain) as (keyof typeof plain & PlainColumn)[];
    return {
      ...plain,
      ...Object.fromEntries(names.map((name) => [name, this.cell(name)])),
      alternatives: alternativeRoles.flatMap((role) => this.alternatives(role)),
    };
  }

  /** The column that a part of the entry came from: alternatives are numbered across their roles. */
  columnOf(field: string, { alternatives }: EntryText): SpecificationColumn {
    const [, index, part] = /^alternatives\.(\d+)\.(\w+)$/.exec(field) ?? [];
    if (index === undefined) return field === "alternatives" ? "periodOption.value" : (field as PlainColumn);
    const role = alternatives[Number(index)]?.role ?? "periodOption";
    return `${role}.${part as AlternativePart}`;
  }

  source(): TableSource | undefined {
    const title = this.cell("source");
    const said = foldName(this.cell("sourceKind"));
    const kind = sourceKindNames.find(
      (name) => said !== "" && [name.toLowerCase(), foldName(sourceKindWords[name])].includes(said),
    );
    if (said !== "" && kind === undefined) {
      this.add("sourceKind", `expected one of: ${Object.values(sourceKindWords).join(", ")}`);
    }
    if (title === "") return undefined;
    const edition = this.cell("sourceEdition");
    return { title, ...(kind === undefined ? {} : { kind }), ...(edition === "" ? {} : { edition }) };
  }

  entry(reading: EntryReading): SpecificationEntry | undefined {
    const text = this.text();
    const read = readEntryText(text, reading);
    if (read.ok) return read.entry;
    for (const { field, message } of read.problems) this.add(this.columnOf(field, text), message);
    return undefined;
  }
}

/** What the reading of a table goes by; `newId` is asked once per row. */
export interface TableReading extends Omit<EntryReading, "id"> {
  readonly newId: () => string;
}

function allSources(
  entries: readonly SpecificationEntry[],
  told: readonly TableSource[],
): readonly TableSource[] {
  const sources = new Map<string, TableSource>();
  for (const source of told) sources.set(source.title, { ...sources.get(source.title), ...source });
  for (const { alternatives } of entries) {
    for (const { source } of alternatives) {
      if (!sources.has(source.title)) sources.set(source.title, { title: source.title });
    }
  }
  sources.delete(noSourceTitle);
  return [...sources.values()];
}

/**
 * Reads a table of a specification, one entry a row, and everything that is wrong with it, cell by cell. The headings
 * must be in order: ask {@link headingProblem} first. Rows beyond the limit of a specification are not read, and said.
 */
export function readSpecificationTable(
  table: CellTable,
  { newId, ...reading }: TableReading,
): SpecificationTable {
  const columns = table.headings.map(columnNamed);
  const entries: SpecificationEntry[] = [];
  const sources: TableSource[] = [];
  const problems: TableProblem[] = [];
  for (const row of table.rows.slice(0, specificationLimits.entries)) {
    const reader = new RowReader(columns, table.headings, row);
    const entry = reader.entry({ ...reading, id: newId() });
    const source = reader.source();
    problems.push(...reader.problems);
    if (entry === undefined || reader.problems.length > 0) continue;
    entries.push(entry);
    if (source !== undefined) sources.push(source);
  }
  const beyond = table.rows[specificationLimits.entries];
  if (beyond !== undefined) {
    const message = `a specification has at most ${specificationLimits.entries} entries; rows from here on are not read`;
    problems.push({ line: beyond.line, column: "", heading: "", found: "", message });
  }
  return { entries, sources: allSources(entries, sources), problems };
}
