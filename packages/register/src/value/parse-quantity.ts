import {
  findUnit,
  type MeasuredDimension,
  NotationError,
  parseQuantity,
  parseToe,
  printQuantity,
  unitsOf,
} from "@trunnion/calc";
import type { Characteristic, QuantityCharacteristic, Side } from "../characteristic/characteristic";
import { type ParsedValue, problemWith, type ValueProblem } from "./problem";
import type { Value } from "./value";

/** What the entry alone does not say. */
export interface ParseValueOptions {
  /** Unit of a number that names none, e.g. from a column's heading; for toe also "min per side", "mm total". */
  readonly defaultUnit?: string;
  /** Diameter (m) of the rim a toe distance is measured at, where the entry does not say. */
  readonly rimDiameter?: number;
}

interface Read {
  readonly si: number;
  readonly resolution: number;
  /** The entry, with the unit where that came from elsewhere: a figure without its unit says nothing later. */
  readonly entered: string;
}

const bareNumber = /^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?: ?\d+\/\d+)?$|^[+-]?\d+\/\d+$/;

/** The entry with the heading's unit: by its symbol, or as the heading has it ("min per side"). */
function withUnit(entered: string, heading: string, dimension: MeasuredDimension): string {
  const unit = findUnit(dimension, heading);
  if (unit === undefined) return `${entered} ${heading}`;
  return unit.tight ? `${entered}${unit.symbol}` : `${entered} ${unit.symbol}`;
}

function readToe(entered: string, { defaultUnit, rimDiameter }: ParseValueOptions): Read {
  const bare = defaultUnit !== undefined && isBare(entered);
  const whole = bare ? withUnit(entered, defaultUnit, "angle") : entered;
  const toe = parseToe(whole, rimDiameter === undefined ? {} : { rimDiameter });
  return { si: toe.perWheel, resolution: toe.resolution, entered: whole };
}

const isBare = (entered: string) => bareNumber.test(entered.replace(/^[−–]/, "-"));

/** An entry that is a bare number takes the heading's unit, which is kept with it; any other its own. */
function readPlain(entered: string, dimension: MeasuredDimension, defaultUnit: string | undefined): Read {
  if (defaultUnit === undefined || !isBare(entered)) {
    const { si, resolution } = parseQuantity(entered, dimension);
    return { si, resolution, entered };
  }
  if (findUnit(dimension, defaultUnit) === undefined) throw unknownDefault(entered, dimension, defaultUnit);
  const { si, resolution } = parseQuantity(entered, dimension, { defaultUnit });
  return { si, resolution, entered: withUnit(entered, defaultUnit, dimension) };
}

function unknownDefault(entered: string, dimension: MeasuredDimension, unit: string): NotationError {
  const symbols = unitsOf(dimension).map(({ symbol }) => symbol);
  const problem = `it names no unit, and the heading's "${unit}" is no unit of ${dimension} (${symbols.join(", ")})`;
  const understood = symbols.slice(0, 2).map((symbol) => withUnit(entered, symbol, dimension));
  return new NotationError({ entered, code: "UNKNOWN_UNIT", place: entered.length, problem, understood });
}

function readEntry(
  characteristic: QuantityCharacteristic,
  entered: string,
  options: ParseValueOptions,
): Read {
  const { key, dimension, notation } = characteristic;
  if (dimension === "text") throw new RangeError(`${key} is a quantity, so its dimension cannot be text`);
  if (notation === "toe") return readToe(entered, options);
  return readPlain(entered, dimension, options.defaultUnit);
}

function printed(characteristic: QuantityCharacteristic, si: number): string {
  return printQuantity(si, { dimension: characteristic.dimension, unit: characteristic.units.metric });
}

/** The believable range in words: "6 mm to 50 mm", "at least 1 mm". */
function rangeWords(characteristic: QuantityCharacteristic): string {
  const { minimum, maximum, removable } = characteristic;
  const lower = minimum === undefined ? undefined : printed(characteristic, minimum);
  const upper = maximum === undefined ? undefined : printed(characteristic, maximum);
  const range =
    lower === undefined
      ? `at most ${upper}`
      : upper === undefined
        ? `at least ${lower}`
        : `${lower} to ${upper}`;
  return removable ? `${range}, or "not fitted"` : range;
}

/** Room for the last bits of a conversion, so that a value entered as the limit itself is inside. */
const slack = 1e-9;

/** What is unbelievable about a value; `undefined` when nothing is. */
function unbelievable(characteristic: QuantityCharacteristic, si: number): string | undefined {
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = characteristic;
  const room = slack * Math.abs(si);
  if (si <= 0 && minimum > 0) return "must be above 0";
  if (si < 0 && minimum === 0) return "must not be below 0";
  if (si < minimum - room) return "is too small to be believed";
  return si > maximum + room ? "is too large to be believed" : undefined;
}

/**
 * The range that is usual of a characteristic, in words, where a value lies outside of it; nothing where it does not, or
 * where nothing is said of what is usual.
 */
export function usualBeside(characteristic: Characteristic, value: Value): string | undefined {
  if (characteristic.kind !== "quantity" || value.kind !== "quantity") return undefined;
  const { usual } = characteristic;
  if (usual === undefined) return undefined;
  const { lowest, highest } = usual;
  const room = slack * Math.abs(value.si);
  if (value.si >= lowest - room && value.si <= highest + room) return undefined;
  return `${printed(characteristic, lowest)} to ${printed(characteristic, highest)}`;
}

/** Words for a value outside of what is usual: `Front camber, left: "-6°" is unusual; usual is -4° to 2°`. */
export function sayUnusual(characteristic: Characteristic, side: Side, value: Value): string | undefined {
  const usual = usualBeside(characteristic, value);
  if (usual === undefined) return undefined;
  const name = side === "whole" ? characteristic.label : `${characteristic.label}, ${side}`;
  return `${name}: "${value.entered}" is unusual; usual is ${usual}`;
}

function notationProblem(
  characteristic: QuantityCharacteristic,
  entered: string,
  { problem, understood }: NotationError,
): { readonly ok: false; readonly problem: ValueProblem } {
  const is = problem.startsWith("is ") ? problem : `cannot be read: ${problem}`;
  const expected = understood.length === 0 ? "a figure with its unit" : understood.join(" or ");
  return problemWith(characteristic, entered, { code: "NOTATION", is, expected });
}

/** Reads a quantity and holds it against what is believable; see `parseValue`. */
export function parseQuantityValue(
  characteristic: QuantityCharacteristic,
  entered: string,
  options: ParseValueOptions = {},
): ParsedValue {
  try {
    const read = readEntry(characteristic, entered, options);
    const is = unbelievable(characteristic, read.si);
    if (is !== undefined) {
      return problemWith(characteristic, entered, {
        code: "OUT_OF_RANGE",
        is,
        expected: rangeWords(characteristic),
      });
    }
    return { ok: true, value: { kind: "quantity", ...read } };
  } catch (error) {
    if (error instanceof NotationError) return notationProblem(characteristic, entered, error);
    throw error;
  }
}

/** A limit read in trade notation, in SI. */
export type ParsedLimit =
  | { readonly ok: true; readonly si: number }
  | { readonly ok: false; readonly problem: ValueProblem };
