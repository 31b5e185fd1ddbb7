import { createHash } from "node:crypto";
import {
  type CellProblem,
  type CharacteristicBook,
  type Column,
  chassisKey,
  columnLetter,
  columnsTwice,
  explainNumber,
  foldHeading,
  type NumberPattern,
  plainHeadings,
  type RegisterRow,
  readHeadings,
  readRow,
  refused,
} from "@trunnion/register";
import type { Context } from "../context";
import { readTable } from "../table";

/** A row that was not taken, and why. */
export interface RefusedRow extends CellProblem {
  readonly line: number;
}

/** A row that was taken, but somebody should look at. */
export interface DoubtfulRow {
  readonly line: number;
  readonly text: string;
}

/** A row that can be taken, with what the register's series say of its number. */
export interface PlannedRow {
  readonly line: number;
  readonly key: string;
  readonly claim: number;
  readonly seriesId: string | null;
  readonly serial: number | null;
  readonly row: RegisterRow;
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

interface SeriesFacts {
  readonly id: string;
  readonly slug: string;
  readonly name: string;
  readonly pattern: NumberPattern;
}

async function seriesOf(ctx: Context): Promise<readonly SeriesFacts[]> {
  const rows = await ctx.db.series.findMany({ orderBy: { ordinal: "asc" } });
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
  }));
}

function columnsOf(headings: readonly string[], file: string, book: CharacteristicBook): readonly Column[] {
  const columns = readHeadings(headings, book);
  if (!columns.some((column) => column.kind === "plain" && column.column === "chassis")) {
    throw refused("HEADING_MISSING", { file, wanted: plainHeadings.chassis, found: headings.slice(0, 20) });
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

interface SeriesChoice {
  readonly series: SeriesFacts | null;
  readonly serial: number | null;
  readonly doubt?: string;
  readonly problem?: CellProblem;
}

function chooseSeries(row: RegisterRow, all: readonly SeriesFacts[]): SeriesChoice {
  const fits = all.map((series) => ({ series, explained: explainNumber(row.chassis, series.pattern) }));
  if (row.series === undefined) {
    const fit = fits.find(({ explained }) => explained.ok);
    if (fit?.explained.ok) return { series: fit.series, serial: fit.explained.serial };
    return { series: null, serial: null, doubt: `chassis ${row.chassis} fits no series of this club` };
  }
  const named = foldHeading(row.series);
  const chosen = fits.find(
    ({ series }) => foldHeading(series.slug) === named || foldHeading(series.name) === named,
  );
  if (!chosen) {
    const expected = `one of: ${all.map(({ name }) => name).join(", ")}`;
    return { series: null, serial: null, problem: { column: "Series", found: row.series, expected } };
  }
  const { series, explained } = chosen;
  return explained.ok
    ? { series, serial: explained.serial }
    : { series, serial: null, doubt: explained.problem };
}

interface Taken {
  readonly line: number;
  readonly claim: number;
  readonly engine: string | undefined;
}

/** Whether a further row of one number is another car, and which claimant. */
function claimOf(row: RegisterRow, earlier: readonly Taken[]): number | CellProblem {
  if (row.claim !== undefined) {
    const same = earlier.find(({ claim }) => claim === row.claim);
    if (!same) return row.claim;
    return {
      column: "Claim",
      found: `claimant ${row.claim} of ${row.chassis}, which stands on line ${same.line} already`,
      expected: "one row per car",
    };
  }
  if (earlier.length === 0) return 1;
  const engine = row.engine;
  const differs =
    engine !== undefined && earlier.every((other) => other.engine !== undefined && other.engine !== engine);
  if (differs) return Math.max(...earlier.map(({ claim }) => claim)) + 1;
  return {
    column: "Chassis",
    found: `${row.chassis}, which stands on line ${earlier[0]?.line} already`,
    expected:
      'one row per car; where two cars claim the number, "2" under "Claim" or their two engine numbers',
  };
}

class Reading {
  readonly rows: PlannedRow[] = [];
  readonly refusedRows: RefusedRow[] = [];
  readonly doubtfulRows: DoubtfulRow[] = [];
  private readonly taken = new Map<string, Taken[]>();

  constructor(
    private readonly columns: readonly Column[],
    private readonly series: readonly SeriesFacts[],
    private readonly today: string,
  ) {}

  take(line: number, cells: readonly string[]): void {
    const reading = readRow(this.columns, cells, this.today);
    if (reading.ok) this.place(line, reading.row);
    else this.refuse(line, reading.problems);
  }

  private place(line: number, row: RegisterRow): void {
    const choice = chooseSeries(row, this.series);
    const key = chassisKey(row.chassis);
    const earlier = this.taken.get(key) ?? [];
    const claim = claimOf(row, earlier);
    if (choice.problem || typeof claim !== "number") {
      this.refuse(
        line,
        [choice.problem, claim].filter((part) => typeof part === "object"),
      );
      return;
    }
    if (choice.doubt !== undefined) this.doubtfulRows.push({ line, text: choice.doubt });
    if (claim > 1)
      this.doubtfulRows.push({
        line,
        text: `another car claims ${row.chassis} too: taken as claimant ${claim}`,
      });
    this.taken.set(key, [...earlier, { line, claim, engine: row.engine }]);
    this.rows.push({ line, key, claim, row, seriesId: choice.series?.id ?? null, serial: choice.serial });
  }

  private refuse(line: number, problems: readonly CellProblem[]): void {
    this.refusedRows.push(...problems.map((problem) => ({ line, ...problem })));
  }
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
  const reading = new Reading(columns, await seriesOf(ctx), ctx.today);
  for (const { line, cells } of table.rows) reading.take(line, cells);
  return {
    file: input.file,
    sha256: createHash("sha256").update(input.bytes).digest("hex"),
    rowsRead: table.rows.length,
    rows: reading.rows,
    refusedRows: reading.refusedRows,
    doubtfulRows: reading.doubtfulRows,
    unknownHeadings: columns.flatMap(({ kind, heading }) => (kind === "unknown" ? [heading] : [])),
  };
}
