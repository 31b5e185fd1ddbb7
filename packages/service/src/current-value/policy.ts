import { Prisma, type Verdict } from "@trunnion/db";
import { type Origin, type Side, saySince, stateKey, type Value } from "@trunnion/register";
import type { Assessment } from "../assessment";
import { type ValueColumns, valueColumns } from "../value-columns";

/** A row of current values as it is written. */
export interface CurrentRow extends ValueColumns {
  readonly carId: string;
  readonly characteristic: string;
  readonly side: Side;
  readonly origin: Origin;
  readonly originId: string;
  /** ISO day. */
  readonly since: string | null;
  readonly sinceText: string | null;
  readonly nominalNumber: number | null;
  readonly verdict: Verdict;
}

const numberOf = (value: Value | undefined) => (value?.kind === "quantity" ? value.si : null);

/** The rows of current values that an assessment amounts to: what only the specification says is no value of the car. */
export function currentRows({ record, state, deviations }: Assessment): readonly CurrentRow[] {
  const compared = new Map(
    deviations.map((deviation) => [stateKey(deviation.characteristic, deviation.side), deviation]),
  );
  const known = [...state.entries()].filter(([, { origin }]) => origin !== "specification");
  return known.map(([key, standing]) => ({
    carId: record.id,
    characteristic: standing.characteristic,
    side: standing.side,
    ...valueColumns(standing.value),
    origin: standing.origin,
    originId: standing.originId,
    since: standing.since ?? null,
    sinceText: saySince(standing) ?? null,
    nominalNumber: numberOf(compared.get(key)?.nominal),
    verdict: compared.get(key)?.verdict ?? "notRecorded",
  }));
}

/** Columns of a current value beside its car, in the order they are read in. */
const fields = [
  "characteristic",
  "side",
  "valueKind",
  "entered",
  "number",
  "resolution",
  "text",
  "origin",
  "originId",
  "since",
  "sinceText",
  "nominalNumber",
  "verdict",
] as const satisfies readonly (keyof CurrentRow)[];

/** The current values of each car as they stand, one row a car, JSON as text; a car without any is left out. */
export const heldSql = (carIds: readonly string[]): Prisma.Sql =>
  Prisma.sql`SELECT v.car_id::text AS car, json_agg(json_build_array(v.characteristic, v.side, v.value_kind, v.entered, v.number,
      v.resolution, v.text, v.origin, v.origin_id, v.since, v.since_text, v.nominal_number, v.verdict))::text AS held
    FROM current_value v WHERE v.car_id = ANY(${[...carIds]}::uuid[]) GROUP BY v.car_id`;

/** Columns of a row that {@link heldSql} read. */
export type HeldCells = readonly (string | number | null)[];

/** How a row is told among those of its car. */
export const heldKey = ([characteristic, side]: HeldCells): string =>
  stateKey(String(characteristic), side as Side);

/** Whether a row as it stands is not what was worked out. */
export const differs = (held: HeldCells, worked: CurrentRow): boolean =>
  fields.some((field, place) => held[place] !== worked[field]);

/** Between the rows of a car in one text. */
const BREAK = "\u001e";

/**
 * The same, each row in PostgreSQL's own text form of a row, the rows of a car in one text: for whoever only asks whether
 * they are those that were worked out. It costs the database half of what JSON does, and nobody takes it apart.
 */
export const heldTextSql = (carIds: readonly string[]): Prisma.Sql =>
  Prisma.sql`SELECT v.car_id::text AS car, string_agg(ROW(v.characteristic, v.side, v.value_kind, v.entered, v.number,
      v.resolution, v.text, v.origin, v.origin_id, v.since, v.since_text, v.nominal_number, v.verdict)::text, ${BREAK}) AS held
    FROM current_value v WHERE v.car_id = ANY(${[...carIds]}::uuid[]) GROUP BY v.car_id`;

/** A double as the database writes it: the shortest decimal, with an exponent below 0.0001 and from 10 to the 15th on. */
function doubleText(number: number): string {
  const size = Math.abs(number);
  if (number === 0 || (size >= 1e-4 && size < 1e15)) return String(number);
  return number.toExponential().replace(/e([+-])(\d)$/, "e$10$2");
}

const number = (cell: number | null) => (cell === null ? "" : doubleText(cell));

/** A text, in quotation marks where it has what means something between cells. */
function quoted(cell: string | null): string {
  if (cell === null) return "";
  return cell !== "" && !/["\\(),\s]/.test(cell) ? cell : `"${cell.replace(/["\\]/g, "$&$&")}"`;
}

/** A row as the database writes `ROW(…)::text`. Keys, words of ours, ids and days need no quotation marks. */
export const rowText = (row: CurrentRow): string =>
  `(${row.characteristic},${row.side},${row.valueKind},${quoted(row.entered)},${number(row.number)},${number(row.resolution)},` +
  `${quoted(row.text)},${row.origin},${row.originId},${row.since ?? ""},${quoted(row.sinceText)},${number(row.nominalNumber)},${row.verdict})`;

/**
 * Whether a car's rows as they stand, by {@link heldTextSql}, are not, one by one, those that were worked out. Where it cannot
 * tell it says so too: whoever then writes compares in the database.
 */
export function rowsDiffer(held: string | undefined, worked: readonly CurrentRow[]): boolean {
  const standing = new Set(held === undefined ? [] : held.split(BREAK));
  return standing.size !== worked.length || worked.some((row) => !standing.has(rowText(row)));
}
