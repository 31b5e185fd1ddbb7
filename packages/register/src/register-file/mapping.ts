import { findUnit, NotationError, parseToe, unitsOf } from "@trunnion/calc";
import { z } from "zod";
import type { CharacteristicBook } from "../characteristic/book";
import type { QuantityCharacteristic } from "../characteristic/characteristic";
import { type Column, columnLetter, foldHeading, plainHeadings, readHeading } from "./heading";
import { type Epoch, epochs } from "./serial-day";

/** Words for a column that is not read, and for one whose cells go to the remarks under its heading. */
export const leaveOut = "leave out";
export const keepAsRemarks = "keep as remarks";

/** What a column is taken for. */
export interface MappedColumn {
  /** Its heading in the file, to the letter. */
  readonly heading: string;
  /** A heading this program knows ("Chassis", "now: Front camber left"), "keep as remarks" or "leave out". */
  readonly as: string;
  /** Unit of bare numbers ("mm", "min per side"), or what a date's bare numbers count from: "days from 1900", "days from 1904". */
  readonly unit?: string;
}

/** What the columns of a file are taken for. Columns it does not name are read by their own headings. */
export interface ImportMapping {
  readonly columns: readonly MappedColumn[];
}

/** Reads a mapping: of a file a person wrote, or as it is remembered. */
export const importMappingSchema: z.ZodType<ImportMapping> = z.strictObject({
  columns: z
    .array(
      z.strictObject({
        heading: z.string().max(500),
        as: z.string().min(1).max(200),
        unit: z.string().min(1).max(40).exactOptional(),
      }),
    )
    .max(500)
    .readonly(),
});

/** The headings of a file, folded and joined: files with the same key have the same columns in the same order. */
export function headingKey(headings: readonly string[]): string {
  return headings.map(foldHeading).join(" | ");
}

/** What is wrong with what a column is taken for. */
export interface MappingProblem {
  /** Place of the column, from 0. */
  readonly index: number;
  readonly part: "as" | "unit";
  readonly message: string;
}

export type MappedColumns =
  | { readonly ok: true; readonly columns: readonly Column[] }
  | { readonly ok: false; readonly problems: readonly MappingProblem[] };

const epochUnit = (epoch: Epoch) => `days from ${epoch}`;
export const epochUnits: readonly string[] = epochs.map(epochUnit);

const dated = new Set<keyof typeof plainHeadings>([
  "built",
  "firstRegistered",
  "statusSince",
  "keptSince",
  "recordedOn",
  "measuredOn",
  "changedOn",
]);
/** True for a column that holds dates. */
export const holdsDates = (column: keyof typeof plainHeadings): boolean => dated.has(column);

/** What a toe's bare figure may be; a distance says the rim it was measured at. */
const toeUnits = ["min per side", "min total", "deg per side", "deg total", "mm total on 13 in rim"];

/** Units a bare number under a characteristic may be in, the usual ones of the club's system first. */
export function unitsFor(
  characteristic: QuantityCharacteristic,
  system: "metric" | "imperial",
): readonly string[] {
  if (characteristic.notation === "toe") return toeUnits;
  if (characteristic.dimension === "text") return [];
  const { metric, imperial } = characteristic.units;
  const first = system === "metric" ? [metric, imperial] : [imperial, metric];
  return [...new Set([...first, ...unitsOf(characteristic.dimension).map(({ symbol }) => symbol)])];
}

function isToeUnit(unit: string): boolean {
  try {
    parseToe(`-1 ${unit}`);
    return true;
  } catch (error) {
    if (error instanceof NotationError) return false;
    throw error;
  }
}

/** Whether bare numbers under a characteristic may be in a unit, however it is spelt. */
export function isUnitOf(characteristic: QuantityCharacteristic, unit: string): boolean {
  const { dimension, notation } = characteristic;
  if (dimension === "text") return false;
  return notation === "toe" ? isToeUnit(unit) : findUnit(dimension, unit) !== undefined;
}

interface Told {
  readonly part: MappingProblem["part"];
  readonly message: string;
}

function withUnit(column: Column, unit: string): Column | Told {
  if (column.kind === "plain") {
    const epoch = epochs.find((one) => foldHeading(epochUnit(one)) === foldHeading(unit));
    if (holdsDates(column.column) && epoch !== undefined) return { ...column, epoch };
    const right = holdsDates(column.column) ? `"${epochUnits.join('" or "')}"` : "no unit";
    return { part: "unit", message: `"${unit}" says nothing of this column; expected ${right}.` };
  }
  if (column.kind !== "value" || column.characteristic.kind !== "quantity")
    return { part: "unit", message: `"${unit}" says nothing of this column; expected no unit.` };
  const { characteristic } = column;
  if (isUnitOf(characteristic, unit)) return { ...column, defaultUnit: unit };
  const units = unitsFor(characteristic, "metric").slice(0, 8).join(", ");
  return {
    part: "unit",
    message: `"${unit}" is no unit of ${characteristic.label.toLowerCase()}; expected ${units}.`,
  };
}

function columnAs(mapped: MappedColumn, index: number, book: CharacteristicBook): Column | Told {
  const { heading, as, unit } = mapped;
  const word = foldHeading(as);
  if (word === leaveOut) return { kind: "ignored", index, heading };
  if (word === keepAsRemarks) return { kind: "unknown", index, heading };
  const read = readHeading(as, index, book);
  if (read.kind === "unknown") {
    const near = `"Chassis", "now: Front camber left", "as built: Colour", "${keepAsRemarks}" or "${leaveOut}"`;
    return { part: "as", message: `"${as}" is no heading of a register; expected one such as ${near}.` };
  }
  const column = { ...read, heading };
  return unit === undefined ? column : withUnit(column, unit);
}

/**
 * The columns of a file as a mapping takes them; a column the mapping does not name by its heading is read by that.
 * Tells every entry that cannot be understood, each at its place.
 */
export function columnsAs(
  headings: readonly string[],
  mapping: ImportMapping,
  book: CharacteristicBook,
): MappedColumns {
  const named = new Map<string, MappedColumn[]>();
  for (const mapped of mapping.columns) {
    const key = foldHeading(mapped.heading);
    named.set(key, [...(named.get(key) ?? []), mapped]);
  }
  const problems: MappingProblem[] = [];
  const columns = headings.map((heading, index): Column => {
    // Columns with one heading are told apart by their order.
    const mapped = named.get(foldHeading(heading))?.shift();
    if (!mapped) return readHeading(heading, index, book);
    const column = columnAs({ ...mapped, heading }, index, book);
    if (!("part" in column)) return column;
    problems.push({ index, ...column });
    return { kind: "unknown", index, heading };
  });
  return problems.length === 0 ? { ok: true, columns } : { ok: false, problems };
}

/** What a mapping names that the file does not have: most often a slip in a mapping written by hand. */
export function unmatchedHeadings(headings: readonly string[], mapping: ImportMapping): readonly string[] {
  const there = new Set(headings.map(foldHeading));
  return mapping.columns.flatMap(({ heading }) => (there.has(foldHeading(heading)) ? [] : [heading]));
}

/** The heading that says just this: how a mapping names what a column holds. */
export function headingOf(column: Column): string {
  if (column.kind === "unknown") return keepAsRemarks;
  if (column.kind === "ignored") return leaveOut;
  if (column.kind === "plain") {
    const [heading] = plainHeadings[column.column];
    return `${heading.charAt(0).toUpperCase()}${heading.slice(1)}`;
  }
  const [side] = column.sides;
  const one = column.sides.length === 1 && side !== "whole" ? ` ${side}` : "";
  const when = column.when === "now" ? "now" : "as built";
  return `${when}: ${column.characteristic.label}${one}`;
}

/** The columns as a mapping that can be kept and read again. */
export function mappingOf(columns: readonly Column[]): ImportMapping {
  return {
    columns: columns.map((column) => {
      const unit =
        column.kind === "value"
          ? column.defaultUnit
          : column.kind === "plain" && column.epoch !== undefined
            ? epochUnit(column.epoch)
            : undefined;
      return { heading: column.heading, as: headingOf(column), ...(unit === undefined ? {} : { unit }) };
    }),
  };
}

/** Every heading there is to choose from, in the order of the dictionary; both sides at once and each side. */
export function allHeadings(book: CharacteristicBook): readonly string[] {
  const plain = (Object.keys(plainHeadings) as (keyof typeof plainHeadings)[]).map((column) =>
    headingOf({ kind: "plain", index: 0, heading: "", column }),
  );
  const values = book.all.flatMap(({ label, sided }) =>
    (sided ? [label, `${label} left`, `${label} right`] : [label]).flatMap((name) => [
      `now: ${name}`,
      `as built: ${name}`,
    ]),
  );
  return [...plain, keepAsRemarks, leaveOut, ...values];
}

/** How a column is called in a message: its letter and heading. */
export const columnName = (index: number, heading: string): string =>
  heading === "" ? columnLetter(index) : `${columnLetter(index)} "${heading}"`;
