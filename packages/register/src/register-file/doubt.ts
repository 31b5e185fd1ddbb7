import type { PartialDate } from "../identity/partial-date";
import { sayDay } from "../identity/say-day";
import type { PlainColumn } from "./heading";
import type { CellDoubt, RegisterRow } from "./row";

/** A date as far as it is known, and as it is written. */
type Dated = Pick<PartialDate, "text" | "earliest" | "latest">;

/** True when a date lies wholly before another, as far as both are known. */
const wholly = (early: PartialDate, late: Dated) => early.latest < late.earliest;

/** Dates of a row that a car can only have once it is built, with the words for them. */
const afterBuilt = {
  firstRegistered: "first registered",
  keptSince: "kept since",
  statusSince: "status since",
  changedOn: "changed on",
  recordedOn: "recorded on",
  measuredOn: "measured on",
} as const;

/**
 * Words for something of a car that would have been wholly before it was built: `kept since 1965, before it was built
 * (1971)`; nothing where that is not so, or either is not known.
 */
export function sayBeforeBuilt(
  what: string,
  date: PartialDate | null | undefined,
  built: Dated | undefined,
): string | undefined {
  if (!date || !built || !wholly(date, built)) return undefined;
  return `${what} ${date.text}, before it was built (${built.text})`;
}

/** How a report names the column of something. */
export type PlaceOf = (column: PlainColumn) => string;

function outOfOrder(row: RegisterRow, built: Dated | undefined, place: PlaceOf): readonly CellDoubt[] {
  if (!built) return [];
  return (Object.keys(afterBuilt) as (keyof typeof afterBuilt)[]).flatMap((part) => {
    const date = row[part];
    const text = sayBeforeBuilt(afterBuilt[part], date, built);
    return date && text !== undefined ? [{ column: place(part), found: date.text, text }] : [];
  });
}

/**
 * Pairs that UTF-8 read as Windows-1252 leaves (Ã¸ for ø, â€“ for a dash), what Windows-1252 read as UTF-8 leaves, and
 * question marks inside a word. Names with a true "Ã" before a vowel exist; so it is a doubt, not an error.
 */
const GARBLED =
  /[ÃÂ][\u0080-\u00bf\u0152\u0153\u0160\u0161\u0178\u017d\u017e\u0192\u02c6\u02dc\u2013-\u2122]|â(?:€|„)|\ufffd|\p{L}\?\p{Ll}/u;

/** A text that looks as if it had been read in a wrong encoding on its way here. */
export function looksGarbled(text: string): boolean {
  return GARBLED.test(text);
}

function garbled(row: RegisterRow): readonly CellDoubt[] {
  const texts: readonly (readonly [string, string | undefined])[] = [
    ["chassis", row.chassis],
    ["commission number", row.commission],
    ["engine number", row.engine],
    ["body number", row.body],
    ["registration", row.registration],
    ["keeper", row.keeper?.name],
    ["keeper address", row.keeper?.address],
    ["remarks", row.remarks],
    ["donor", row.donor],
    ["reason of the change", row.changedBecause],
    ...[...row.asBuilt, ...row.now].map(
      ({ characteristic, value }) =>
        [characteristic, value.kind === "text" ? value.text : undefined] as const,
    ),
  ];
  const bad = texts.flatMap(([name, text]) => (text !== undefined && looksGarbled(text) ? [name] : []));
  if (bad.length === 0) return [];
  // The words themselves may be a person's name, and doubts go into reports.
  return [{ text: `${bad.join(", ")}: letters look spoilt by a wrong encoding (as "Ã¸" for "ø")` }];
}

/** When a series was built, ISO days, both included. */
export interface BuildPeriod {
  readonly name: string;
  readonly builtFrom: string;
  readonly builtTo: string;
}

/** A car of the series that would have been built when the series was not. */
function outOfPeriod(
  { built }: RegisterRow,
  series: BuildPeriod | undefined,
  place: PlaceOf,
): readonly CellDoubt[] {
  if (!built || !series) return [];
  const { name, builtFrom, builtTo } = series;
  if (built.latest >= builtFrom && built.earliest <= builtTo) return [];
  const period = `${sayDay(builtFrom)} to ${sayDay(builtTo)}`;
  return [
    {
      column: place("built"),
      found: built.text,
      text: `built ${built.text}, when ${name} was not: it was built ${period}`,
    },
  ];
}

/** What doubts are told beside. */
export interface DoubtBasis {
  /** The series the row's car is of. */
  readonly series?: BuildPeriod;
  readonly place: PlaceOf;
}

/** What is possible in a row and yet unlikely: dates out of order or out of the series' time, letters of a wrong encoding. */
export function doubtsOf(row: RegisterRow, { series, place }: DoubtBasis): readonly CellDoubt[] {
  return [...outOfPeriod(row, series, place), ...outOfOrder(row, row.built, place), ...garbled(row)];
}

/**
 * What is unlikely beside what the register has of the car already: a keeper since before it was built, where the row does
 * not say itself when that was.
 */
export function doubtsBeside(
  row: RegisterRow,
  built: Dated | undefined,
  place: PlaceOf,
): readonly CellDoubt[] {
  return row.built === undefined ? outOfOrder(row, built, place) : [];
}
