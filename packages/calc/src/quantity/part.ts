import { compoundSymbol, mayFollow, nextInChain, perLarger } from "./compound";
import type { MeasuredDimension } from "./dimension";
import { examplesOf, refuseRange, unitProblem } from "./explain";
import { NotationError } from "./notation-error";
import { readNumber, type WrittenNumber } from "./number";
import { printQuantity, withUnit } from "./print";
import { dimensionsWith, findUnit, toSi, type Unit } from "./unit";
import { vulgarCharacters } from "./vulgar-fraction";

/** A number with its unit; a compound entry has several. */
export interface Part {
  readonly number: WrittenNumber;
  readonly unit: Unit;
}

/** One part or more, the largest unit first. */
export type Parts = readonly [Part, ...Part[]];

/** What is read, from where, as what. */
export interface Reading {
  readonly text: string;
  readonly at: number;
  readonly dimension: MeasuredDimension;
  readonly sign: 1 | -1;
  /** Unit of an entry that names none. */
  readonly bareUnit: Unit | undefined;
}

/** Reads number and unit, and again, to the end of the text. */
export function readParts(reading: Reading): Parts {
  const { text } = reading;
  const first = readPart(reading, undefined);
  const parts: [Part, ...Part[]] = [first.part];
  let at = first.end;
  let last = first.part;
  while (at < text.length) {
    const next = readPart({ ...reading, at, bareUnit: undefined }, last);
    checkCompound({ ...reading, at }, parts, next.part);
    parts.push(next.part);
    last = next.part;
    at = next.end;
  }
  return parts;
}

/** The symbol of the unit, or of the units, of an entry. */
export function symbolOf(parts: Parts): string {
  return compoundSymbol(parts.map(({ unit }) => unit));
}

/** A compound is summed in its smallest unit, where its parts are mostly whole numbers: 5 ft 6 in is 66 in. */
export function sumOf(parts: Parts, sign: 1 | -1): number {
  const smallest = smallestOf(parts).unit;
  const count = parts.reduce((sum, { number, unit }) => sum + number.value * perLarger(unit, smallest), 0);
  const si = toSi(sign * count, smallest);
  return si === 0 ? 0 : si;
}

/** The last part, whose step is the step of the whole entry. */
export function smallestOf(parts: Parts): Part {
  return parts[parts.length - 1] ?? parts[0];
}

function readPart(reading: Reading, last: Part | undefined): { readonly part: Part; readonly end: number } {
  refuseRange(reading.text, reading.at, reading.dimension);
  const number = readNumber(reading);
  const { unit, end } = readUnit({ ...reading, at: number.end }, last);
  return { part: { number, unit }, end: nextPart(reading.text, end, unit) };
}

/** Where a further part starts: after spaces, and after the dash of 5'-6". */
function nextPart(text: string, at: number, unit: Unit): number {
  const gap = (unit.symbol === "ft" ? /^ *(?:- *(?=[\d.]))?/ : /^ */).exec(text.slice(at));
  return at + (gap?.[0].length ?? 0);
}

/** The longest text from here that spells a unit, ending where the entry ends or a further number starts. */
function readUnit(reading: Reading, last: Part | undefined): { readonly unit: Unit; readonly end: number } {
  const { text, at, dimension, bareUnit } = reading;
  const rest = text.slice(at).trim();
  if (rest === "" && bareUnit !== undefined) return { unit: bareUnit, end: text.length };
  const whole = findUnit(dimension, rest);
  if (whole !== undefined) return { unit: whole, end: text.length };
  const split = dimensionsWith(rest).length > 0 ? undefined : splitUnit(reading);
  if (split !== undefined) return split;
  throw unitProblem({ text, at, dimension, last: last?.unit });
}

const numberStart = new RegExp(`[\\d.${vulgarCharacters}-]`);

function splitUnit({
  text,
  at,
  dimension,
}: Reading): { readonly unit: Unit; readonly end: number } | undefined {
  for (let end = text.length - 1; end > at; end -= 1) {
    if (!numberStart.test(text.charAt(end))) continue;
    const spelt = text.slice(at, end).trim();
    const unit = spelt === "" ? undefined : findUnit(dimension, spelt);
    if (unit !== undefined && nextInChain(dimension, unit) !== undefined) return { unit, end };
  }
  return undefined;
}

function checkCompound({ text, at, dimension, sign }: Reading, parts: Parts, next: Part): void {
  const last = smallestOf(parts);
  const fault = (place: number, problem: string, understood = examplesOf(dimension)) =>
    new NotationError({ entered: text, code: "BAD_COMPOUND", place, problem, understood });
  if (!mayFollow(dimension, last.unit, next.unit)) {
    throw fault(at, `${next.unit.symbol} cannot follow ${last.unit.symbol} in one entry`);
  }
  if (last.number.broken) {
    throw fault(0, `only the last part may have decimals or a fraction, not the part in ${last.unit.symbol}`);
  }
  const limit = perLarger(last.unit, next.unit);
  if (next.number.value < limit) return;
  const all: Parts = [...parts, next];
  const carried = printQuantity(sumOf(all, sign), { dimension, unit: symbolOf(all) });
  throw fault(at, `after ${last.unit.symbol} less than ${withUnit(String(limit), next.unit)} can follow`, [
    carried,
  ]);
}
