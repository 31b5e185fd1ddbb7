import type { Side } from "../characteristic/characteristic";
import type { PartialDate } from "../identity/partial-date";
import { parsePartialDate } from "../identity/partial-date";
import { parseValue, usualBeside } from "../value/parse";
import type { Value } from "../value/value";
import { type Column, columnLetter, foldHeading, type PlainColumn, plainHeadings } from "./heading";
import { dayOfSerial, saySerial } from "./serial-day";

/** Status codes with the words people write for them. */
const statusWords = {
  inUse: ["in use", "on the road", "running"],
  underRestoration: ["under restoration", "restoration", "in restoration"],
  laidUp: ["laid up", "stored", "in store"],
  dismantled: ["dismantled", "broken up", "broken for parts"],
  destroyed: ["destroyed", "scrapped", "burnt"],
  lostFromSight: ["lost from sight", "not heard of", "untraced"],
  identityDisputed: ["identity disputed", "disputed"],
  unknown: ["unknown", "not known", "?"],
} as const;
export type CarStatusCode = keyof typeof statusWords;

const statusByWord = new Map(
  Object.entries(statusWords).flatMap(([code, words]) =>
    words.map((word) => [foldHeading(word), code as CarStatusCode] as const),
  ),
);

/** A cell that cannot be read: where, what was found, what was expected. */
export interface CellProblem {
  /** Letter and heading, e.g. `G "now: front anti-roll bar diameter"`. */
  readonly column: string;
  readonly found: string;
  readonly expected: string;
}

/** What can be read and is yet unlikely: where, what was found, what is unlikely about it. */
export interface CellDoubt {
  /** Letter and heading; missing where no one column is meant. */
  readonly column?: string;
  /** As it is written; missing where that may be a person's name, since doubts go into reports. */
  readonly found?: string;
  readonly text: string;
}

export interface RecordedValue {
  readonly characteristic: string;
  readonly side: Side;
  readonly value: Value;
}

/** One car as a row of a register file tells it. What a cell leaves empty is not in it. */
export interface RegisterRow {
  readonly chassis: string;
  readonly claim?: number;
  readonly series?: string;
  readonly commission?: string;
  readonly engine?: string;
  readonly body?: string;
  readonly registration?: string;
  readonly built?: PartialDate;
  readonly firstRegistered?: PartialDate;
  readonly status?: CarStatusCode;
  readonly statusSince?: PartialDate;
  readonly options: readonly string[];
  readonly keeper?: {
    readonly name?: string;
    readonly address?: string;
    readonly email?: string;
    readonly phone?: string;
  };
  readonly keptSince?: PartialDate;
  readonly recordedOn?: PartialDate;
  readonly measuredOn?: PartialDate;
  readonly changedOn?: PartialDate;
  readonly changedBecause?: string;
  readonly donor?: string;
  readonly remarks?: string;
  readonly asBuilt: readonly RecordedValue[];
  readonly now: readonly RecordedValue[];
}

export type RowReading =
  | { readonly ok: true; readonly row: RegisterRow; readonly doubts: readonly CellDoubt[] }
  | { readonly ok: false; readonly problems: readonly CellProblem[] };

interface Reading {
  readonly cells: ReadonlyMap<PlainColumn, { readonly column: Column; readonly text: string }>;
  readonly problems: CellProblem[];
  readonly today: string;
}

const where = (column: Column) => `${columnLetter(column.index)} "${column.heading}"`;

function textIn(reading: Reading, name: PlainColumn): string | undefined {
  return reading.cells.get(name)?.text;
}

function dateIn(reading: Reading, name: PlainColumn): PartialDate | undefined {
  const cell = reading.cells.get(name);
  if (!cell) return undefined;
  const { column } = cell;
  const epoch = column.kind === "plain" ? column.epoch : undefined;
  const text = epoch === undefined ? cell.text : (dayOfSerial(cell.text, epoch) ?? cell.text);
  const parsed = parsePartialDate(text, { today: reading.today });
  if (parsed.ok) return parsed.date;
  const expected = saySerial(cell.text) ?? parsed.problem.expected;
  reading.problems.push({ column: where(column), found: cell.text, expected });
  return undefined;
}

/** The status a word means, in any of the spellings people use; nothing for any other word. */
export function statusNamed(text: string): CarStatusCode | undefined {
  const folded = foldHeading(text);
  return statusByWord.get(folded);
}

function statusIn(reading: Reading): CarStatusCode | undefined {
  const cell = reading.cells.get("status");
  if (!cell) return undefined;
  const found = statusNamed(cell.text);
  if (found) return found;
  const expected = Object.values(statusWords).map(([word]) => word);
  reading.problems.push({
    column: where(cell.column),
    found: cell.text,
    expected: `one of: ${expected.join(", ")}`,
  });
  return undefined;
}

function claimIn(reading: Reading): number | undefined {
  const cell = reading.cells.get("claim");
  if (!cell) return undefined;
  const claim = Number(cell.text);
  if (Number.isInteger(claim) && claim >= 1 && claim <= 9) return claim;
  reading.problems.push({
    column: where(cell.column),
    found: cell.text,
    expected: "a whole number from 1 to 9",
  });
  return undefined;
}

/** What a cell says, and what is usual where that is something else. */
interface ReadCell {
  readonly parsed: ReturnType<typeof parseValue>;
  readonly usual: string | undefined;
}

/** Cells of one column that were read already, by their text; a register says the same few hundred things of all its cars. */
const readCells = new WeakMap<Column, Map<string, ReadCell>>();
/** Texts remembered of one column at most. */
const REMEMBERED = 2_000;

function valueIn(column: Column & { readonly kind: "value" }, text: string): ReadCell {
  const cells = readCells.get(column) ?? new Map<string, ReadCell>();
  readCells.set(column, cells);
  const known = cells.get(text);
  if (known !== undefined) return known;
  const { characteristic, defaultUnit } = column;
  const parsed = parseValue(characteristic, text, defaultUnit === undefined ? {} : { defaultUnit });
  const read = { parsed, usual: parsed.ok ? usualBeside(characteristic, parsed.value) : undefined };
  if (cells.size < REMEMBERED) cells.set(text, read);
  return read;
}

interface Told {
  readonly problems: CellProblem[];
  readonly doubts: CellDoubt[];
}

function valuesIn(columns: readonly Column[], cells: readonly string[], { problems, doubts }: Told) {
  const values: { asBuilt: RecordedValue[]; now: RecordedValue[] } = { asBuilt: [], now: [] };
  for (const column of columns) {
    const text = cells[column.index] ?? "";
    if (column.kind !== "value" || text === "") continue;
    const { parsed, usual } = valueIn(column, text);
    if (usual !== undefined) {
      doubts.push({ column: where(column), found: text, text: `unusual; ${usual} is usual` });
    }
    if (parsed.ok) {
      const { characteristic } = column;
      const { value } = parsed;
      values[column.when].push(
        ...column.sides.map((side) => ({ characteristic: characteristic.key, side, value })),
      );
    } else problems.push({ column: where(column), found: text, expected: parsed.problem.expected });
  }
  return values;
}

function keeperIn(reading: Reading): RegisterRow["keeper"] {
  const keeper = present({
    name: textIn(reading, "keeper"),
    address: textIn(reading, "keeperAddress"),
    email: textIn(reading, "keeperEmail"),
    phone: textIn(reading, "keeperPhone"),
  });
  return Object.keys(keeper).length === 0 ? undefined : keeper;
}

/** What no column has a place for goes to the remarks under its heading, so that no cell is lost. */
function remarksIn(
  reading: Reading,
  columns: readonly Column[],
  cells: readonly string[],
): string | undefined {
  const rest = columns
    .filter((column) => column.kind === "unknown" && (cells[column.index] ?? "") !== "")
    .map((column) => `${column.heading || columnLetter(column.index)}: ${cells[column.index]}`);
  const remarks = [textIn(reading, "remarks"), ...rest].filter((part) => part !== undefined);
  return remarks.length === 0 ? undefined : remarks.join("\n");
}

type Present<T> = { [K in keyof T]?: Exclude<T[K], undefined> };

/** Leaves out what is undefined. */
function present<T extends object>(parts: T): Present<T> {
  return Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== undefined)) as Present<T>;
}

/** How a report names the column that holds something, by letter and heading; by the heading it would have where there is none. */
export function columnPlace(columns: readonly Column[], wanted: PlainColumn): string {
  const found = columns.find((column) => column.kind === "plain" && column.column === wanted);
  return found ? where(found) : `"${plainHeadings[wanted][0]}"`;
}

/**
 * Reads one row of a register file. A row is taken whole or not at all: with any cell that cannot be
 * read it is refused, and every such cell is told.
 *
 * @param today ISO day; dates after it are refused
 */
export function readRow(columns: readonly Column[], cells: readonly string[], today: string): RowReading {
  const plain = columns.flatMap((column) => {
    const text = cells[column.index] ?? "";
    return column.kind === "plain" && text !== "" ? [[column.column, { column, text }] as const] : [];
  });
  const problems: CellProblem[] = [];
  const doubts: CellDoubt[] = [];
  const reading: Reading = { cells: new Map(plain), problems, today };
  const extra = cells.slice(columns.length).findIndex((cell) => cell !== "");
  if (extra >= 0) {
    const index = columns.length + extra;
    const column = `${columnLetter(index)} (no heading)`;
    problems.push({
      column,
      found: cells[index] ?? "",
      expected: `no cell beyond the ${columns.length} headings`,
    });
  }
  const chassis = textIn(reading, "chassis");
  if (chassis === undefined)
    problems.push({ column: "Chassis", found: "nothing", expected: "a chassis number" });
  const row: RegisterRow = {
    chassis: chassis ?? "",
    options: (textIn(reading, "options") ?? "").split(/[\s,;/+]+/).filter((code) => code !== ""),
    ...valuesIn(columns, cells, { problems, doubts }),
    ...present({
      claim: claimIn(reading),
      series: textIn(reading, "series"),
      commission: textIn(reading, "commission"),
      engine: textIn(reading, "engine"),
      body: textIn(reading, "body"),
      registration: textIn(reading, "registration"),
      built: dateIn(reading, "built"),
      firstRegistered: dateIn(reading, "firstRegistered"),
      status: statusIn(reading),
      statusSince: dateIn(reading, "statusSince"),
      keeper: keeperIn(reading),
      keptSince: dateIn(reading, "keptSince"),
      recordedOn: dateIn(reading, "recordedOn"),
      measuredOn: dateIn(reading, "measuredOn"),
      changedOn: dateIn(reading, "changedOn"),
      changedBecause: textIn(reading, "changedBecause"),
      donor: textIn(reading, "donor"),
      remarks: remarksIn(reading, columns, cells),
    }),
  };
  return problems.length === 0 ? { ok: true, row, doubts } : { ok: false, problems };
}
