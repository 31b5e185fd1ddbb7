import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import { explainNumber, type NumberPattern } from "../identity/number";
import { parsePartialDate } from "../identity/partial-date";
import { parseValue } from "../value/parse";
import { type Column, foldHeading, type PlainColumn, plainHeadings } from "./heading";
import { holdsDates, unitsFor } from "./mapping";
import { statusNamed } from "./row";
import { dayOfSerial } from "./serial-day";

/** What columns are looked at by. */
export interface ContentBasis {
  readonly book: CharacteristicBook;
  /** Number patterns of the club's series. */
  readonly patterns: readonly NumberPattern[];
  /** Names and short names of the club's series. */
  readonly seriesNames: readonly string[];
  /** ISO day. */
  readonly today: string;
  readonly unitSystem: "metric" | "imperial";
}

/** How the cells of a column read, taken for something. */
export interface Fit {
  /** Cells that read, of how many. */
  readonly read: number;
  readonly of: number;
  /** A bare number that needs a unit, where there is one. */
  readonly bare?: string;
  /** A number that may be a spreadsheet's day number, where there is one. */
  readonly serial?: string;
}

const BARE = /^[+\-−–]?\d+(?:[.,]\d+)?(?: ?\d+\/\d+)?$|^\d+\/\d+$/;
const EMAIL = /^[^\s@]+@[^\s@]+\.[^\s@]+$/;

/** Whether a cell is a bare number that says nothing under a characteristic until somebody says its unit. */
export function asksUnit(characteristic: Characteristic, cell: string): boolean {
  if (characteristic.kind !== "quantity" || !BARE.test(cell)) return false;
  const read = parseValue(characteristic, cell);
  return !read.ok && read.problem.code === "NOTATION";
}

type Reads = (cell: string) => boolean;

function readsPlain(column: PlainColumn, basis: ContentBasis): Reads | undefined {
  const { patterns, seriesNames, today } = basis;
  if (column === "chassis") return (cell) => patterns.some((pattern) => explainNumber(cell, pattern).ok);
  if (column === "status") return (cell) => statusNamed(cell) !== undefined;
  if (column === "claim") return (cell) => /^[1-9]$/.test(cell);
  if (column === "keeperEmail") return (cell) => EMAIL.test(cell);
  if (column === "series") {
    const names = new Set(seriesNames.map(foldHeading));
    return (cell) => names.has(foldHeading(cell));
  }
  return holdsDates(column) ? (cell) => parsePartialDate(cell, { today }).ok : undefined;
}

function readsValue(characteristic: Characteristic, unit: string | undefined, basis: ContentBasis): Reads {
  const assumed =
    unit ?? (characteristic.kind === "quantity" ? unitsFor(characteristic, basis.unitSystem) : []);
  const units = typeof assumed === "string" ? [assumed] : assumed.slice(0, 2);
  return (cell) => {
    if (!BARE.test(cell) || units.length === 0) return parseValue(characteristic, cell).ok;
    return units.some((defaultUnit) => parseValue(characteristic, cell, { defaultUnit }).ok);
  };
}

/** How the cells read, taken for what a column may hold; nothing where anything reads as such. */
export function fitOf(column: Column, cells: readonly string[], basis: ContentBasis): Fit | undefined {
  if (column.kind === "unknown" || column.kind === "ignored") return undefined;
  const reads =
    column.kind === "plain"
      ? readsPlain(column.column, basis)
      : readsValue(column.characteristic, column.defaultUnit, basis);
  if (!reads) return undefined;
  const bare =
    column.kind === "value" && column.defaultUnit === undefined
      ? cells.find((cell) => asksUnit(column.characteristic, cell))
      : undefined;
  const isDate = column.kind === "plain" && holdsDates(column.column);
  const serial = isDate ? cells.find((cell) => dayOfSerial(cell, 1900) !== undefined) : undefined;
  return {
    read: cells.filter(reads).length,
    of: cells.length,
    ...(bare === undefined ? {} : { bare }),
    ...(serial === undefined ? {} : { serial }),
  };
}

/** What the cells of a column look like, where its heading says nothing. */
export interface ContentGuess {
  readonly column?: Column;
  readonly reason: string;
  readonly certainty: "likely" | "possible" | "none";
}

const plain = (column: PlainColumn): Column => ({ kind: "plain", index: 0, heading: "", column });

function guessPlain(cells: readonly string[], basis: ContentBasis): ContentGuess | undefined {
  const told: readonly (readonly [PlainColumn, number, string])[] = [
    ["chassis", 0.6, "fit the chassis numbers of this club's series"],
    ["keeperEmail", 0.8, "are e-mail addresses"],
    ["series", 0.8, "name a series of this club"],
    ["status", 0.8, "say what has become of a car"],
  ];
  for (const [column, share, words] of told) {
    const fit = fitOf(plain(column), cells, basis);
    if (fit && fit.read >= 2 && fit.read >= share * fit.of) {
      return {
        column: plain(column),
        certainty: "likely",
        reason: `${fit.read} of ${fit.of} cells ${words}`,
      };
    }
  }
  const dates = cells.filter((cell) => parsePartialDate(cell, { today: basis.today }).ok).length;
  if (dates < 2 || dates < 0.9 * cells.length) return undefined;
  const kinds = (Object.keys(plainHeadings) as PlainColumn[]).filter(holdsDates).length;
  return {
    certainty: "none",
    reason: `${dates} of ${cells.length} cells are dates: say which of ${kinds} dates it is`,
  };
}

function guessChoice(cells: readonly string[], { book }: ContentBasis): ContentGuess | undefined {
  const distinct = [...new Set(cells.map(foldHeading))];
  if (distinct.length < 2 || cells.length < 3) return undefined;
  const fits = book.all.filter(
    (one) =>
      one.kind === "choice" &&
      distinct.filter((cell) => parseValue(one, cell).ok).length >= 0.8 * distinct.length,
  );
  const [only, ...more] = fits;
  if (!only) return undefined;
  if (more.length === 0 && !only.sided) {
    const column: Column = {
      kind: "value",
      index: 0,
      heading: "",
      when: "now",
      characteristic: only,
      sides: ["whole"],
    };
    return { column, certainty: "possible", reason: `the cells are answers to "${only.label}"` };
  }
  const names = fits.slice(0, 3).map(({ label }) => `"${label}"`);
  const rest = fits.length > 3 ? ` and ${fits.length - 3} more` : "";
  return { certainty: "none", reason: `the cells answer ${names.join(", ")}${rest}: say which` };
}

function guessQuantity(cells: readonly string[], { book }: ContentBasis): ContentGuess | undefined {
  const named = cells.filter((cell) => !BARE.test(cell) && /\d/.test(cell));
  if (named.length < 2 || named.length < 0.8 * cells.length) return undefined;
  const fits = book.all.filter(
    (one) => one.kind === "quantity" && named.every((cell) => parseValue(one, cell).ok),
  );
  if (fits.length === 0) return undefined;
  const names = fits.slice(0, 3).map(({ label }) => `"${label}"`);
  return {
    certainty: "none",
    reason: `the cells are figures such as ${named[0]}, which may be ${names.join(", ")}: say of what`,
  };
}

/** What the cells of a column look like; nothing where they look like nothing in particular. */
export function guessByContent(cells: readonly string[], basis: ContentBasis): ContentGuess | undefined {
  return guessPlain(cells, basis) ?? guessChoice(cells, basis) ?? guessQuantity(cells, basis);
}
