import {
  type CellDoubt,
  type CellProblem,
  type CharacteristicBook,
  type Column,
  chassisKey,
  columnLetter,
  columnName,
  columnPlace,
  columnsAs,
  columnsTwice,
  doubtsOf,
  type ImportMapping,
  plainHeadings,
  type RegisterRow,
  readHeadings,
  readRow,
  refused,
} from "@trunnion/register";
import type { Context } from "../context";
import { dayOf } from "../day";
import { unneutral } from "../neutral-cell";
import { FORMULA_ERROR, type Table, type TableRow } from "../table";
import {
  type Claimant,
  type ColumnName,
  type PlannedRow,
  placeRow,
  type SeriesFacts,
  withClaimant,
} from "./policy";

/** Longest part of a cell that a report quotes. */
const QUOTED = 120;

/** A row that was not taken, and why. */
export interface RefusedRow extends CellProblem {
  readonly line: number;
}

/** A row that was taken, but somebody should look at. */
export interface DoubtfulRow extends CellDoubt {
  readonly line: number;
}

/** The club's series, as rows are placed by them. */
export async function seriesFacts(ctx: Context): Promise<readonly SeriesFacts[]> {
  const rows = await ctx.db.series.findMany({
    include: { options: { select: { code: true }, orderBy: { code: "asc" } } },
    orderBy: { ordinal: "asc" },
  });
  return rows.map((row) => ({
    id: row.id,
    slug: row.slug,
    name: row.name,
    pattern: {
      series: row.name,
      prefix: row.numberPrefix,
      digits: row.numberDigits,
      first: row.firstSerial,
      last: row.lastSerial,
      suffixes: row.numberSuffixes,
    },
    options: row.options.map(({ code }) => code),
    builtFrom: dayOf(row.builtFrom),
    builtTo: dayOf(row.builtTo),
  }));
}

/** The cars of numbers that more than one car of the register claims, by the number's key. */
async function disputedClaimants({ db }: Context): Promise<ReadonlyMap<string, readonly Claimant[]>> {
  const further = await db.car.findMany({ where: { claim: { gt: 1 } }, select: { chassisKey: true } });
  const keys = [...new Set(further.map(({ chassisKey: key }) => key))];
  const cars = await db.car.findMany({
    where: { chassisKey: { in: keys } },
    select: {
      chassisKey: true,
      claim: true,
      identities: { where: { kind: "engine" }, select: { numberKey: true } },
    },
    orderBy: { claim: "asc" },
  });
  const claimants = new Map<string, readonly Claimant[]>();
  for (const { chassisKey: key, claim, identities } of cars) {
    const engines = identities.map(({ numberKey }) => numberKey);
    claimants.set(key, [...(claimants.get(key) ?? []), { claim, engines }]);
  }
  return claimants;
}

export interface ColumnsInput {
  readonly headings: readonly string[];
  readonly file: string;
  readonly book: CharacteristicBook;
  readonly mapping?: ImportMapping;
}

function mapped({ headings, file, book, mapping }: ColumnsInput): readonly Column[] {
  if (!mapping) return readHeadings(headings, book);
  const read = columnsAs(headings, mapping, book);
  if (read.ok) return read.columns;
  const problems = read.problems.map(
    ({ index, message }) => `column ${columnName(index, headings[index] ?? "")}: ${message}`,
  );
  throw refused("MAPPING_NOT_READ", { file, problems: problems.slice(0, 20) });
}

/**
 * What the columns of a register file hold: by the mapping, or by their headings.
 *
 * @throws Refusal HEADING_MISSING without a column for the chassis number, HEADING_TWICE, MAPPING_NOT_READ
 */
export function columnsOf(input: ColumnsInput): readonly Column[] {
  const { headings, file } = input;
  const columns = mapped(input);
  if (!columns.some((column) => column.kind === "plain" && column.column === "chassis")) {
    const found = headings.slice(0, 20).map((heading) => heading.slice(0, QUOTED));
    throw refused("HEADING_MISSING", { file, wanted: plainHeadings.chassis, found });
  }
  const [twice] = columnsTwice(columns);
  if (twice) {
    const letters = columns
      .filter(({ heading }) => twice.includes(heading))
      .map(({ index }) => columnLetter(index));
    throw refused("HEADING_TWICE", { file, heading: twice[0], columns: letters });
  }
  return columns;
}

/** Headings that mean nothing here; a column without heading is named by its letter, if it has any cell at all. */
export function unknownHeadings(
  columns: readonly Column[],
  { rows }: Pick<Table, "rows">,
): readonly string[] {
  return columns.flatMap(({ kind, heading, index }) => {
    if (kind !== "unknown") return [];
    if (heading !== "") return [heading];
    return rows.some(({ cells }) => (cells[index] ?? "") !== "") ? [`column ${columnLetter(index)}`] : [];
  });
}

/** Headings of columns that this program works out from the record, and does not read. */
export function derivedHeadingsIn(columns: readonly Column[]): readonly string[] {
  return columns.flatMap((column) => (column.kind === "ignored" && column.derived ? [column.heading] : []));
}

/** What came of some rows. */
export interface ReadRows {
  readonly rows: readonly PlannedRow[];
  readonly refusedRows: readonly RefusedRow[];
  readonly doubtfulRows: readonly DoubtfulRow[];
}

export interface RowReaderInput {
  readonly columns: readonly Column[];
  readonly series: readonly SeriesFacts[];
  readonly claimants: ReadonlyMap<string, readonly Claimant[]>;
  readonly today: string;
}

/**
 * Reads a file's rows in their order, some at a time, and places each: which car of which series it speaks of. It keeps
 * which numbers it has met, so that a number that stands twice is found however far apart.
 */
export class RowReader {
  private rows: PlannedRow[] = [];
  private refusedRows: RefusedRow[] = [];
  private doubtfulRows: DoubtfulRow[] = [];
  private readonly claimants: Map<string, readonly Claimant[]>;

  constructor(private readonly input: RowReaderInput) {
    this.claimants = new Map(input.claimants);
  }

  /** Reads the next rows. */
  take(rows: readonly TableRow[]): ReadRows {
    this.rows = [];
    this.refusedRows = [];
    this.doubtfulRows = [];
    for (const { line, cells } of rows) this.takeOne(line, cells);
    const { rows: planned, refusedRows, doubtfulRows } = this;
    return { rows: planned, refusedRows, doubtfulRows };
  }

  private takeOne(line: number, cells: readonly string[]): void {
    const problems = this.read(line, cells);
    const short = (found: string) => (found.length > QUOTED ? `${found.slice(0, QUOTED)}…` : found);
    this.refusedRows.push(
      ...problems.map(({ found, ...problem }) => ({ line, found: short(found), ...problem })),
    );
  }

  /** Reads and places a row; what it answers keeps the row out. */
  private read(line: number, cells: readonly string[]): readonly CellProblem[] {
    const { columns, today } = this.input;
    if (this.repeatsHeadings(cells)) {
      const [first] = columns;
      const found = cells[0] ?? "";
      return [{ column: this.at(first?.index ?? 0), found, expected: "a car; these are the headings again" }];
    }
    const formulas = cells.flatMap((cell, index): CellProblem[] => {
      const column = columns[index];
      if (!column || column.kind === "ignored") return [];
      // What it comes to is not in the file; as text it would be a wrong value.
      if (cell.startsWith("=")) return [this.problem(index, cell, "a value, not a formula")];
      if (!FORMULA_ERROR.test(cell)) return [];
      return [this.problem(index, cell, "a value, not the error that a formula came to")];
    });
    if (formulas.length > 0) return formulas;
    const reading = readRow(columns, cells.map(unneutral), today);
    return reading.ok ? this.place(line, reading.row, reading.doubts) : reading.problems;
  }

  /** A list that was made to be printed has its headings on every page. */
  private repeatsHeadings(cells: readonly string[]): boolean {
    const { columns } = this.input;
    const named = columns.filter(({ heading }) => heading !== "");
    const said = named.filter(({ index }) => (cells[index] ?? "") !== "");
    // Of a heading in two lines the first alone may be repeated.
    return said.length > 1 && said.every(({ heading, index }) => heading.startsWith(cells[index] ?? ""));
  }

  private problem(index: number, found: string, expected: string): CellProblem {
    return { column: this.at(index), found, expected };
  }

  private at(index: number): string {
    return `${columnLetter(index)} "${this.input.columns[index]?.heading ?? ""}"`;
  }

  private readonly columnOf: ColumnName = (wanted) => columnPlace(this.input.columns, wanted);

  private place(line: number, row: RegisterRow, doubts: readonly CellDoubt[]): readonly CellProblem[] {
    const key = chassisKey(row.chassis);
    const claimants = this.claimants.get(key) ?? [];
    const placed = placeRow(row, { series: this.input.series, claimants, place: this.columnOf });
    if (!placed.ok) return placed.problems;
    const { claim, options, serial, series } = placed;
    const told = this.input.series.find(({ id }) => id === series?.id);
    const basis = { place: this.columnOf, ...(told === undefined ? {} : { series: told }) };
    this.doubtfulRows.push(
      ...[...placed.doubts, ...doubts, ...doubtsOf(row, basis)].map((doubt) => ({ line, ...doubt })),
    );
    this.claimants.set(key, withClaimant(claimants, { claim, line, row }));
    this.rows.push({ line, key, claim, row, options, serial, series });
    return [];
  }
}

/** A reader of rows for the club as it is now. */
export async function openRowReader(ctx: Context, columns: readonly Column[]): Promise<RowReader> {
  return new RowReader({
    columns,
    series: await seriesFacts(ctx),
    claimants: await disputedClaimants(ctx),
    today: ctx.today,
  });
}
