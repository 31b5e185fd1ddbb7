import { chassisKey, explainNumber, type NumberPattern, serialText } from "./number";

/** Letters that are taken for digits, and the digit each is taken for. */
const lookalikes: Readonly<Record<string, string>> = {
  O: "0",
  Q: "0",
  I: "1",
  L: "1",
  Z: "2",
  S: "5",
  G: "6",
  B: "8",
};

/** {@link chassisKey} with every letter that looks like a digit as that digit: for finding, never for filing. */
export function lookalikeKey(number: string): string {
  return chassisKey(number).replace(/[OQILZSGB]/g, (letter) => lookalikes[letter] ?? letter);
}

export const likenesses = ["same", "lookalike", "transposed", "oneCharacter"] as const;
/**
 * How alike two numbers are: `same` but for blanks, dashes and capitals; with letters for digits; with two neighbours
 * exchanged; with one character another, more or less.
 */
export type Likeness = (typeof likenesses)[number];

function isTransposed(one: string, other: string): boolean {
  if (one.length !== other.length) return false;
  const at = [...one].findIndex((character, index) => character !== other[index]);
  const swapped = `${one.slice(0, at)}${one.charAt(at + 1)}${one.charAt(at)}${one.slice(at + 2)}`;
  return at >= 0 && swapped === other;
}

function isOneCharacterOff(one: string, other: string): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (long.length - short.length > 1) return false;
  let start = 0;
  while (start < short.length && short[start] === long[start]) start += 1;
  const skip = short.length === long.length ? 1 : 0;
  return short.slice(start + skip) === long.slice(start + 1);
}

/** How alike two numbers are; `undefined` when they are not. Two numbers of one likeness may well be two cars. */
export function likeness(one: string, other: string): Likeness | undefined {
  const [a, b] = [chassisKey(one), chassisKey(other)];
  if (a === b) return "same";
  if (lookalikeKey(one) === lookalikeKey(other)) return "lookalike";
  if (isTransposed(a, b)) return "transposed";
  return isOneCharacterOff(a, b) ? "oneCharacter" : undefined;
}

/** A number that fits the pattern and is close to one that does not. */
export interface NearMiss {
  readonly number: string;
  readonly serial: number;
  /** What would have been misread or miswritten, as "letters for digits". */
  readonly because: string;
}

interface Guess {
  readonly key: string;
  readonly because: string;
}

/** The key with its serial's part written in digits; `undefined` where nothing changes by that. */
function digitsForLetters(key: string, { prefix, digits }: NumberPattern): Guess | undefined {
  const start = chassisKey(prefix);
  if (lookalikeKey(key.slice(0, start.length)) !== lookalikeKey(start)) return undefined;
  const figures = lookalikeKey(key.slice(start.length, start.length + digits));
  const guess = `${start}${figures}${key.slice(start.length + digits)}`;
  return guess === key ? undefined : { key: guess, because: "letters for digits, or digits for letters" };
}

function figuresOf(key: string): {
  readonly before: string;
  readonly figures: string;
  readonly after: string;
} {
  const [, before = "", figures = "", after = ""] = /^(.*?)(\d+)(\D*)$/s.exec(key) ?? [];
  return { before, figures, after };
}

function guessesFor(key: string, pattern: NumberPattern): readonly Guess[] {
  const start = chassisKey(pattern.prefix);
  const rest = key.startsWith(start) ? key.slice(start.length) : key;
  const { before, figures, after } = figuresOf(rest);
  const trimmed = figures.replace(/^0+(?=\d)/, "");
  const swaps = [...figures].slice(1).map((_, index) => {
    const swapped = `${figures.slice(0, index)}${figures.charAt(index + 1)}${figures.charAt(index)}${figures.slice(index + 2)}`;
    return { key: `${start}${swapped}${after}`, because: "two digits exchanged" };
  });
  const letters = digitsForLetters(key, pattern);
  return [
    ...(letters === undefined ? [] : [letters]),
    ...(before === "" ? [] : [{ key: `${start}${figures}${after}`, because: "another prefix" }]),
    ...(before === "" && rest === key ? [{ key: `${start}${key}`, because: "the prefix left out" }] : []),
    { key: `${start}${trimmed.padStart(pattern.digits, "0")}${after}`, because: "leading zeros" },
    ...swaps,
    { key: `${start}${figures}`, because: "another ending" },
  ];
}

/** A number as the pattern writes it: prefix, serial and ending without blanks. */
export function numberText(pattern: NumberPattern, serial: number, suffix = ""): string {
  return `${pattern.prefix}${serialText(pattern, serial)}${suffix}`;
}

/**
 * Numbers that fit the pattern and could be meant by one that does not: letters for digits, another prefix or
 * ending, leading zeros, two digits exchanged. Likeliest first, none twice; empty for a number that fits. These are
 * proposals: nothing is corrected by itself.
 */
export function nearMisses(number: string, pattern: NumberPattern): readonly NearMiss[] {
  if (explainNumber(number, pattern).ok) return [];
  const found = new Map<string, NearMiss>();
  for (const { key, because } of guessesFor(chassisKey(number), pattern)) {
    const reading = explainNumber(key, pattern);
    if (!reading.ok) continue;
    const proposed = numberText(pattern, reading.serial, reading.suffix);
    if (!found.has(proposed)) found.set(proposed, { number: proposed, serial: reading.serial, because });
  }
  return [...found.values()];
}
