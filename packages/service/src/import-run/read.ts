import { createHash } from "node:crypto";
import {
  type CellProblem,
  type CharacteristicBook,
  type Column,
  chassisKey,
  columnLetter,
  columnsTwice,
  plainHeadings,
  type RegisterRow,
  readHeadings,
  readRow,
  refused,
} from "@trunnion/register";
import type { Context } from "../context";
import {
  type Claimant,
  type ColumnName,
  type PlannedRow,
  placeRow,
  type SeriesFacts,
  withClaimant,
} from "../planned-row";
import { readTable, type TableRow } from "../table";

/** Longest part of a cell that a report quotes. */
const QUOTED = 120;

/** A row that was not taken, and why. */
export interface RefusedRow extends CellProblem {
  readonly line: number;
}

/** A row that was taken, but somebody should look at. */
export interface DoubtfulRow {
  readonly line: number;
  readonly text: string;
}

/** A register file, read: nothing is written yet. */
export interface RegisterFile {
  readonly file: string;
  readonly sha256: string;
  readonly rowsRead: number;
  readonly rows: readonly PlannedRow[];
  readonly refusedRows: readonly RefusedRow[];
  readonly doubtfulRows: readonly DoubtfulRow[];
  /** Headings that mean nothing here; their cells go to the remarks. */
  readonly unknownHeadings: readonly string[];
}

async function seriesOf(ctx: Context): Promise<readonly SeriesFacts[]> {
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
  }));
}

function columnsOf(headings: readonly string[], file: string, book: CharacteristicBook): readonly Column[] {
  const columns = readHeadings(headings, book);
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

interface ReadingInput {
  readonly columns: readonly Column[];
  readonly series: readonly SeriesFacts[];
  readonly claimants: ReadonlyMap<string, readonly Claimant[]>;
  readonly today: string;
}

class Reading {
  readonly rows: PlannedRow[] = [];
  readonly refusedRows: RefusedRow[] = [];
  readonly doubtfulRows: DoubtfulRow[] = [];
  private readonly claimants: Map<string, readonly Claimant[]>;

  constructor(private readonly input: ReadingInput) {
    this.claimants = new Map(input.claimants);
  }

  take(line: number, cells: readonly string[]): void {
    const problems = this.read(line, cells);
    const short = (found: string) => (found.length > QUOTED ? `${found.slice(0, QUOTED)}…` : found);
    this.refusedRows.push(
      ...problems.map(({ found, ...problem }) => ({ line, found: short(found), ...problem })),
    );
  }

  /** Reads and places a row; what it answers keeps the row out. */
  private read(line: number, cells: readonly string[]): readonly CellProblem[] {
    const { columns, today } = this.input;
    const formulas = cells.flatMap((cell, index): CellProblem[] =>
      // What it comes to is not in the file; as text it would be a wrong value.
      cell.startsWith("=") && index < columns.length
        ? [{ column: this.at(index), found: cell, expected: "a value, not a formula" }]
        : [],
    );
    if (formulas.length > 0) return formulas;
    const reading = readRow(columns, cells, today);
    return reading.ok ? this.place(line, reading.row) : reading.problems;
  }

  private at(index: number): string {
    return `${columnLetter(index)} "${this.input.columns[index]?.heading ?? ""}"`;
  }

  private readonly columnOf: ColumnName = (wanted) => {
    const found = this.input.columns.find((column) => column.kind === "plain" && column.column === wanted);
    return found ? this.at(found.index) : `"${plainHeadings[wanted][0]}"`;
  };

  private place(line: number, row: RegisterRow): readonly CellProblem[] {
    const key = chassisKey(row.chassis);
    const claimants = this.claimants.get(key) ?? [];
    const placed = placeRow(row, { series: this.input.series, claimants, place: this.columnOf });
    if (!placed.ok) return placed.problems;
    const { claim, options, serial, series } = placed;
    this.doubtfulRows.push(...placed.doubts.map((text) => ({ line, text })));
    this.claimants.set(key, withClaimant(claimants, { claim, line, row }));
    this.rows.push({ line, key, claim, row, options, serial, series });
    return [];
  }
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

/** Headings that mean nothing here; a column without heading is named by its letter, if it has any cell at all. */
function unknownHeadings(columns: readonly Column[], rows: readonly TableRow[]): readonly string[] {
  return columns.flatMap(({ kind, heading, index }) => {
    if (kind !== "unknown") return [];
    if (heading !== "") return [heading];
    return rows.some(({ cells }) => (cells[index] ?? "") !== "") ? [`column ${columnLetter(index)}`] : [];
  });
}

/**
 * Reads a register file against the club's series and dictionary; writes nothing.
 *
 * @throws Refusal of `readTable`, HEADING_MISSING, HEADING_TWICE
 */
export async function readRegisterFile(
  ctx: Context,
  input: { readonly file: string; readonly bytes: Uint8Array; readonly book: CharacteristicBook },
): Promise<RegisterFile> {
  const table = readTable(input.bytes, input.file);
  const columns = columnsOf(table.headings, input.file, input.book);
  const reading = new Reading({
    columns,
    series: await seriesOf(ctx),
    claimants: await disputedClaimants(ctx),
    today: ctx.today,
  });
  for (const { line, cells } of table.rows) reading.take(line, cells);
  return {
    file: input.file,
    sha256: createHash("sha256").update(input.bytes).digest("hex"),
    rowsRead: table.rows.length,
    rows: reading.rows,
    refusedRows: reading.refusedRows,
    doubtfulRows: reading.doubtfulRows,
    unknownHeadings: unknownHeadings(columns, table.rows),
  };
}
