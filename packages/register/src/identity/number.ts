import { z } from "zod";

/** How a series numbers its cars. */
export interface NumberPattern {
  /** Name of the series, for the words. */
  readonly series: string;
  readonly prefix: string;
  /** Digits of the serial, leading zeros included. */
  readonly digits: number;
  /** First and last serial, inclusive. */
  readonly first: number;
  readonly last: number;
  /** Endings a number may have (body, steering side); a number without one is right too. */
  readonly suffixes: readonly string[];
}

/** Reads a number pattern; refuses one that no number could fit. */
export const numberPatternSchema: z.ZodType<NumberPattern> = z
  .strictObject({
    series: z.string().trim().min(1).max(80),
    prefix: z.string().max(12),
    digits: z.int().min(1).max(9),
    first: z.int().min(0),
    last: z.int().min(0),
    suffixes: z.array(z.string().min(1).max(6)).max(40).readonly(),
  })
  .superRefine(({ digits, first, last }, context) => {
    if (first > last) {
      context.addIssue({
        code: "custom",
        path: ["last"],
        message: `the last serial must not be below ${first}`,
      });
    }
    if (last >= 10 ** digits) {
      context.addIssue({ code: "custom", path: ["last"], message: `${last} has more than ${digits} digits` });
    }
  });

export type NumberProblemCode = "PREFIX" | "NO_SERIAL" | "DIGITS" | "ABOVE_LAST" | "BELOW_FIRST" | "SUFFIX";

/** What a number says when held against a pattern. */
export type NumberReading =
  | { readonly ok: true; readonly serial: number; readonly suffix: string }
  | { readonly ok: false; readonly code: NumberProblemCode; readonly problem: string };

/**
 * A number in capitals without blanks, dashes, dots, strokes and underscores: how numbers and marks are found and
 * compared. Letters that look like digits stay letters: see {@link lookalikeKey}.
 */
export function chassisKey(number: string): string {
  return number
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[\s\-‐‑–—−./_]/g, "");
}

/** A serial with its leading zeros. */
export function serialText({ digits }: NumberPattern, serial: number): string {
  return String(serial).padStart(digits, "0");
}

function refuse(code: NumberProblemCode, problem: string): NumberReading {
  return { ok: false, code, problem };
}

function checkSerial(figures: string, pattern: NumberPattern): NumberReading | undefined {
  const { series, digits, first, last } = pattern;
  if (figures.length !== digits) {
    const has = `${figures.length} ${figures.length === 1 ? "digit" : "digits"}`;
    return refuse("DIGITS", `${figures} has ${has} where ${series} has ${digits}`);
  }
  const serial = Number(figures);
  if (serial > last) {
    return refuse(
      "ABOVE_LAST",
      `${figures} lies above the last of ${series}, which is ${serialText(pattern, last)}`,
    );
  }
  if (serial < first) {
    return refuse(
      "BELOW_FIRST",
      `${figures} lies below the first of ${series}, which is ${serialText(pattern, first)}`,
    );
  }
  return undefined;
}

/**
 * Holds a number against a series' pattern: its serial and ending, or what is wrong with it in one sentence.
 * Blanks, dashes and small letters do not matter; nothing else is put right silently.
 *
 * @example explainNumber("SV2-0421", series2) // => "0421 lies above the last of Series 2, which is 0398"
 */
export function explainNumber(number: string, pattern: NumberPattern): NumberReading {
  const { series, prefix } = pattern;
  const key = chassisKey(number);
  if (!key.startsWith(chassisKey(prefix))) {
    return refuse("PREFIX", `${number} does not begin with ${prefix}, as the numbers of ${series} do`);
  }
  const rest = key.slice(chassisKey(prefix).length);
  const [, figures = "", suffix = ""] = /^(\d+)(.*)$/s.exec(rest) ?? [];
  if (figures === "") {
    const after = prefix === "" ? "" : ` after ${prefix}`;
    return refuse(
      "NO_SERIAL",
      `${number} has no serial${after}; ${series} has ${pattern.digits} digits there`,
    );
  }
  const wrong = checkSerial(figures, pattern);
  if (wrong !== undefined) return wrong;
  const known = pattern.suffixes.find((one) => chassisKey(one) === suffix);
  if (suffix !== "" && known === undefined) {
    const endings = pattern.suffixes.length === 0 ? "no ending" : pattern.suffixes.join(", ");
    return refuse("SUFFIX", `${number} ends in ${suffix}; ${series} has ${endings}`);
  }
  return { ok: true, serial: Number(figures), suffix: known ?? "" };
}

/**
 * What is wrong with a number that fits none of a club's series: in the words of the one whose beginning it bears, where
 * that is one alone.
 *
 * @example sayMisfit("S3-0900", [series2, series3]) // => "0900 lies above the last of Series 3, which is 0412"
 */
export function sayMisfit(number: string, patterns: readonly NumberPattern[]): string {
  const borne = patterns
    .map((pattern) => explainNumber(number, pattern))
    .flatMap((reading) => (reading.ok || reading.code === "PREFIX" ? [] : [reading.problem]));
  const [problem] = borne;
  return borne.length === 1 && problem !== undefined ? problem : `${number} fits no series of this club`;
}

/** Spans of serials that no number of a list holds, in order; serials outside the pattern are passed over. */
export function serialGaps(
  serials: Iterable<number>,
  { first, last }: Pick<NumberPattern, "first" | "last">,
): readonly { readonly from: number; readonly to: number }[] {
  const held = [...new Set(serials)]
    .filter((serial) => serial >= first && serial <= last)
    .sort((a, b) => a - b);
  const gaps: { from: number; to: number }[] = [];
  let next = first;
  for (const serial of [...held, last + 1]) {
    if (serial > next) gaps.push({ from: next, to: serial - 1 });
    next = serial + 1;
  }
  return gaps;
}
