import { refuseDoubtfulComma, refuseThousands, refuseTrail } from "./number-refusal";
import { fail, instead, type Spot } from "./spot";
import { vulgarCharacters, vulgarFractions } from "./vulgar-fraction";

/** A number as written, with the step it implies: 1.25 steps by 0.01, 9/16 by 1/16, 16 by 1. */
export interface WrittenNumber {
  readonly value: number;
  readonly step: number;
  /** Place in the text right after it. */
  readonly end: number;
  /** True when written with a fraction, a decimal point or a comma. */
  readonly broken: boolean;
}

const mixedVulgar = new RegExp(`^(\\d+)?[ -]*([${vulgarCharacters}])`);
const mixed = /^(?:(\d+)(?: +| *- *))?(\d+) *\/ *(\d+)/;
const decimalNumber = /^(?:\d+(?:[.,]\d+)?|[.,]\d+)/;
/** A double holds 15 digits exactly; more would be kept only in appearance. */
const digitLimit = 15;

/**
 * Reads the number that starts at a spot of an entry.
 * @throws NotationError for what is no number, an impossible fraction, a thousands separator, or a decimal comma
 * that could be one
 */
export function readNumber(spot: Spot): WrittenNumber {
  refuseThousands(spot);
  const written = readVulgar(spot) ?? readFraction(spot) ?? readDecimal(spot);
  refuseTrail(spot, written.end);
  return written;
}

function readVulgar({ text, at }: Spot): WrittenNumber | undefined {
  const match = mixedVulgar.exec(text.slice(at));
  const parts = vulgarFractions[match?.[2] ?? ""];
  if (match === null || parts === undefined) return undefined;
  const [numerator, denominator] = parts;
  const whole = Number(match[1] ?? 0);
  return fractionNumber({ whole, numerator, denominator }, at + match[0].length);
}

function readFraction(spot: Spot): WrittenNumber | undefined {
  const { text, at } = spot;
  const match = mixed.exec(text.slice(at));
  if (match === null) return undefined;
  const [all, whole, top = "", bottom = ""] = match;
  limitDigits(spot, `${whole ?? ""}${top}${bottom}`);
  const parts = { whole: Number(whole ?? 0), numerator: Number(top), denominator: Number(bottom) };
  if (parts.denominator === 0) {
    fail(spot, {
      code: "BAD_FRACTION",
      problem: "a fraction over zero is no number",
      understood: ["9/16 in"],
    });
  }
  if (whole !== undefined && parts.numerator >= parts.denominator) {
    const problem = `after a whole number a fraction below one can follow, not ${top}/${bottom}`;
    fail(spot, { code: "BAD_FRACTION", problem, understood: [instead(spot, all, carried(parts))] });
  }
  return fractionNumber(parts, at + all.length);
}

interface FractionParts {
  readonly whole: number;
  readonly numerator: number;
  readonly denominator: number;
}

function fractionNumber({ whole, numerator, denominator }: FractionParts, end: number): WrittenNumber {
  return { value: (whole * denominator + numerator) / denominator, step: 1 / denominator, end, broken: true };
}

/** 1 9/8 → 2 1/8. */
function carried({ whole, numerator, denominator }: FractionParts): string {
  const sum = whole + Math.floor(numerator / denominator);
  const rest = numerator % denominator;
  return rest === 0 ? String(sum) : `${sum} ${rest}/${denominator}`;
}

function readDecimal(spot: Spot): WrittenNumber {
  const found = decimalNumber.exec(spot.text.slice(spot.at))?.[0];
  if (found === undefined) fail(spot, { code: "NO_NUMBER", problem: "a number is missing", understood: [] });
  refuseDoubtfulComma(spot, found);
  limitDigits(spot, found.replace(/\D/g, "").replace(/^0+/, ""));
  const plain = found.replace(",", ".");
  const decimals = plain.includes(".") ? plain.length - plain.indexOf(".") - 1 : 0;
  const step = Number(`1e-${decimals}`);
  return { value: Number(plain), step, end: spot.at + found.length, broken: decimals > 0 };
}

function limitDigits(spot: Spot, digits: string): void {
  if (digits.length <= digitLimit) return;
  const problem = `a number of more than ${digitLimit} digits cannot be kept exactly`;
  fail(spot, { code: "BAD_NUMBER", problem, understood: [] });
}
