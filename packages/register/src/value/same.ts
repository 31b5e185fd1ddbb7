import { foldName } from "../characteristic/fold-name";
import type { Value } from "./value";

type QuantityValue = Extract<Value, { readonly kind: "quantity" }>;

const vulgarDenominators: Readonly<Record<string, number>> = {
  "½": 2,
  "¼": 4,
  "¾": 4,
  "⅛": 8,
  "⅜": 8,
  "⅝": 8,
  "⅞": 8,
};
const inchFraction = /(?:\/\s*(\d+)|([½¼¾⅛⅜⅝⅞]))\s*(?:ins?\b|inch(?:es)?\b|"|″|”|'')/i;
/** A rule is read to at least this part of an inch; a fraction in lowest terms hides it. */
const inchParts = 32;

/**
 * The step a quantity is known to. For a fraction of an inch 1/32 in, if the entry is not finer: 5/8 is 20/32
 * in lowest terms, and by its denominator alone a 17 mm bar would pass for a 5/8 in one.
 */
export function stepOf({ resolution, entered }: QuantityValue): number {
  const [, written, vulgar = ""] = inchFraction.exec(entered) ?? [];
  const denominator = written === undefined ? vulgarDenominators[vulgar] : Number(written);
  return denominator === undefined
    ? resolution
    : (resolution * denominator) / Math.max(denominator, inchParts);
}

/** Room for the last bits of a conversion. */
const slack = 1e-9;

function sameQuantity(one: QuantityValue, other: QuantityValue): boolean {
  const difference = Math.abs(one.si - other.si);
  if (difference <= slack * Math.max(Math.abs(one.si), Math.abs(other.si))) return true;
  const step = Math.max(stepOf(one), stepOf(other));
  return difference < (step / 2) * (1 - slack);
}

/**
 * Whether two values say the same. Two quantities do when they differ by less than half the coarser of their steps:
 * 16 mm and 15.9 mm, 9/16 in and 14.3 mm; 16 mm and 16.5 mm do not. Texts are compared without regard to capitals,
 * accents, blanks and dashes.
 */
export function sameValue(one: Value, other: Value): boolean {
  if (one === other) return true;
  if (one.kind === "quantity" && other.kind === "quantity") return sameQuantity(one, other);
  return one.kind === other.kind && contentOf(one) === contentOf(other);
}

/** What a value says apart from how it was entered: the SI number, code, canonical designation, text or day as text. */
export function contentOf(value: Value): string {
  switch (value.kind) {
    case "quantity":
      return String(value.si);
    case "choice":
      return value.code;
    case "designation":
      return value.canonical;
    case "text":
      return foldName(value.text);
    case "date":
      return value.date;
    case "absent":
      return "";
  }
}

/**
 * Whether a value says what another asks for, and perhaps more: a tyre marked `175/70 R 14 84H` is the one specified
 * as `175/70 R 14`, which states no service description.
 */
export function fulfils(actual: Value, asked: Value): boolean {
  if (sameValue(actual, asked)) return true;
  if (actual.kind !== "designation" || asked.kind !== "designation") return false;
  return actual.canonical.startsWith(`${asked.canonical} `);
}
