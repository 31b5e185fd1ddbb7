/** How a series numbers its cars. */
export interface NumberPattern {
  /** Name of the series, for the words. */
  readonly series: string;
  readonly prefix: string;
  readonly digits: number;
  /** First and last serial, inclusive. */
  readonly first: number;
  readonly last: number;
  /** Endings a number may have; empty where it has none. */
  readonly suffixes: readonly string[];
}

/** What a number says when held against a pattern. */
export type NumberReading =
  | { readonly ok: true; readonly serial: number; readonly suffix: string }
  | { readonly ok: false; readonly problem: string };

/** A number in capitals without blanks, dashes, dots and slashes: how numbers and marks are found. */
export function chassisKey(number: string): string {
  return number
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[\s\-–—./]/g, "");
}

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

function shape({ prefix, digits, suffixes }: NumberPattern): string {
  const ending = suffixes.length === 0 ? "" : ` and ${suffixes.join(" or ")}`;
  return `${prefix === "" ? "" : `${prefix} and `}${digits} digits${ending}`;
}

/**
 * Holds a number against a series' pattern: its serial, or what is wrong with it in one sentence.
 *
 * @example explainNumber("S2-0421", series2) // => "0421 lies above the last of Series 2, which is 0398"
 */
export function explainNumber(number: string, pattern: NumberPattern): NumberReading {
  const { series, digits, first, last } = pattern;
  const endings = pattern.suffixes.map((suffix) => escaped(chassisKey(suffix))).join("|");
  const form = new RegExp(`^${escaped(chassisKey(pattern.prefix))}(\\d+)(${endings})$`);
  const [, figures = "", suffix = ""] = form.exec(chassisKey(number)) ?? [];
  if (figures === "")
    return { ok: false, problem: `${number} is not of ${series}'s form: ${shape(pattern)}` };
  if (figures.length !== digits) {
    return { ok: false, problem: `${number} has ${figures.length} digits where ${series} has ${digits}` };
  }
  const serial = Number(figures);
  const padded = (value: number) => String(value).padStart(digits, "0");
  if (serial > last) {
    return { ok: false, problem: `${figures} lies above the last of ${series}, which is ${padded(last)}` };
  }
  if (serial < first) {
    return { ok: false, problem: `${figures} lies below the first of ${series}, which is ${padded(first)}` };
  }
  return { ok: true, serial, suffix };
}
