import type { EnteredQuantity, WorkingStep } from "../catalogue/computation";
import { CalcRefusal } from "../catalogue/refusal";
import { compoundNamed } from "../quantity/compound";
import type { MeasuredDimension } from "../quantity/dimension";
import { NotationError } from "../quantity/notation-error";
import { parseQuantity } from "../quantity/parse";
import { printQuantity } from "../quantity/print";
import { defaultUnit, findUnit } from "../quantity/unit";

/** A raw entry: SI number or text. */
export type RawReading = number | string;
/** A reading understood: SI value, and the step its text implies. */
export interface Reading {
  readonly si: number;
  readonly resolution?: number;
}

/** Reads and prints quantities of the one kind an input declares. */
export interface Reader {
  readonly dimension: MeasuredDimension;
  /** Kind of a difference or an uncertainty: the same, but for temperatures. */
  readonly difference: MeasuredDimension;
  /** Unit of values; may be a compound, such as °'. */
  readonly unit: string;
  /** Unit of differences, and of the working: the smallest part of a compound. */
  readonly partUnit: string;
  /** @throws CalcRefusal (`NOT_READ`, `NOT_FINITE`) quoting the entry */
  read(raw: RawReading, place: string): Reading;
  /** An uncertainty, a step, a scatter. @throws CalcRefusal, also below zero */
  readDifference(raw: RawReading | undefined, place: string): number | undefined;
  /** A value as an answer; its text is what {@link print} says. */
  value(si: number): EnteredQuantity;
  /** A difference, an uncertainty or a scatter as an answer. */
  differenceValue(si: number): EnteredQuantity;
  print(si: number): string;
  printDifference(si: number): string;
}

/**
 * The reader of an input's kind.
 * @throws CalcRefusal (`NO_SUCH_UNIT`) when the unit is none of the dimension's
 */
export function readerOf(
  { dimension, unit }: { dimension: MeasuredDimension; unit?: string | undefined },
  entries: readonly RawReading[],
): Reader {
  const simple = unit === undefined ? undefined : findUnit(dimension, unit)?.symbol;
  if (unit !== undefined && simple === undefined && compoundNamed(dimension, unit) === undefined)
    throw new CalcRefusal("NO_SUCH_UNIT", `"${unit}" is no unit of ${dimension}`, "unit");
  const shown = simple ?? unit ?? unitOfFirstText(dimension, entries) ?? defaultUnit(dimension).symbol;
  const parts = compoundNamed(dimension, shown);
  const decimals = parts === undefined ? undefined : 1;
  const partUnit = parts?.at(-1)?.symbol ?? shown;
  const difference = dimension === "temperature" ? "temperatureDifference" : dimension;
  const parse = (raw: RawReading, as: MeasuredDimension, place: string): Reading =>
    typeof raw === "number" ? { si: raw } : readText(raw, { dimension: as, unit: simple, place });
  return {
    dimension,
    difference,
    unit: shown,
    partUnit,
    read: (raw, place) => parse(raw, dimension, place),
    readDifference: (raw, place) => {
      if (raw === undefined) return undefined;
      const { si } = parse(raw, difference, place);
      if (si >= 0) return si;
      throw new CalcRefusal("NEGATIVE", `${place} must be zero or more, but is ${raw}`, place);
    },
    value: (si) => ({ si, dimension, unit: shown, decimals }),
    differenceValue: (si) => ({ si, dimension: difference, unit: partUnit }),
    print: (si) => printQuantity(si, { dimension, unit: shown, decimals }),
    printDifference: (si) => printQuantity(si, { dimension: difference, unit: partUnit }),
  };
}

/** A step of the working in the readings' unit, or the smallest part of it. */
export function readingStep(
  reader: Reader,
  [symbol, label, formula, value, note]: readonly [string, string, string, number, string?],
  of: "value" | "difference" = "difference",
): WorkingStep {
  const dimension = of === "value" ? reader.dimension : reader.difference;
  const step = { symbol, label, formula, value, dimension, unit: reader.partUnit };
  return note === undefined ? step : { ...step, note };
}

interface TextContext {
  readonly dimension: MeasuredDimension;
  readonly unit: string | undefined;
  readonly place: string;
}

function readText(text: string, { dimension, unit, place }: TextContext): Reading {
  try {
    const { si, resolution } = parseQuantity(
      text,
      dimension,
      unit === undefined ? {} : { defaultUnit: unit },
    );
    return { si, resolution };
  } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    throw new CalcRefusal("NOT_READ", `${place}: ${error.message}`, place, { cause: error });
  }
}

function unitOfFirstText(dimension: MeasuredDimension, entries: readonly RawReading[]): string | undefined {
  const text = entries.find((entry) => typeof entry === "string");
  if (typeof text !== "string") return undefined;
  try {
    return parseQuantity(text, dimension).unit;
  } catch {
    return undefined;
  }
}
