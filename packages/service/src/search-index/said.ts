import { chassisKey, foldText } from "@trunnion/register";

/** Words of one search; further ones are passed over, and that is said. */
const WORDS = 8;
/** Words that the name of a series has at most. */
const NAME = 4;
/** Letters from which on a word may be the beginning of one in a series' name. */
const NAMED_FROM = 3;

/** What of a series a search may name. */
export interface SearchedSeries {
  readonly slug: string;
  readonly name: string;
  readonly marque: string;
  /** How its chassis numbers begin, and how many digits follow. */
  readonly numberPrefix: string;
  readonly numberDigits: number;
}

/** One word looked for, or several in quotation marks: folded, and as a number is keyed. */
export interface Word {
  /** As typed. */
  readonly said: string;
  readonly folded: string;
  readonly key: string;
  /** The chassis number that the word is short for, keyed: `S30338` of "s3-338". */
  readonly number?: string;
  /** Short names of series in whose name or marque a word begins so. */
  readonly series: readonly string[];
}

/** A series that a search names with all its words: "series 2". */
export interface NamedSeries {
  /** As typed. */
  readonly said: string;
  /** Short names; two marques may have a series of one name. */
  readonly series: readonly string[];
}

/** What somebody looks for: every word must be on a car's record, and its series be one of each that is named. */
export interface Searched {
  readonly words: readonly Word[];
  readonly named: readonly NamedSeries[];
  /** Words beyond the eighth, as typed. */
  readonly passedOver: readonly string[];
}

interface Token {
  readonly text: string;
  readonly quoted: boolean;
}

const keyOf = (text: string) => chassisKey(foldText(text)).toLowerCase();

/** Words, those in quotation marks together; an inch mark at the end of a word is none. Dashes between words are left out. */
function tokensOf(search: string): readonly Token[] {
  const found = search.matchAll(/["“„«]([^"“”„«»]*)["“”»](?=\s|$)|(\S+)/gu);
  return [...found]
    .map(([, quoted, plain = ""]) => ({
      text: (quoted ?? plain.replace(/^["“„«]+/u, "")).trim().replace(/\s+/gu, " "),
      quoted: quoted !== undefined,
    }))
    .filter(({ text }) => foldText(text).trim() !== "" && !/^[\p{Pd}/·.,;:]+$/u.test(text));
}

function numberOf(key: string, series: readonly SearchedSeries[]): string | undefined {
  for (const { numberPrefix, numberDigits } of series) {
    const prefix = keyOf(numberPrefix);
    const rest = key.startsWith(prefix) ? key.slice(prefix.length) : "";
    if (prefix !== "" && /^\d+$/.test(rest) && rest.length < numberDigits)
      return chassisKey(numberPrefix) + rest.padStart(numberDigits, "0");
  }
  return undefined;
}

function wordOf({ text, quoted }: Token, series: readonly SearchedSeries[]): Word {
  const folded = foldText(text);
  const key = keyOf(text);
  const number = numberOf(key, series);
  const begins = ({ name, marque }: SearchedSeries) =>
    foldText(`${name} ${marque}`)
      .split(/\s+/u)
      .some((word) => word.startsWith(folded));
  const inName = !quoted && folded.length >= NAMED_FROM && /^\p{L}+$/u.test(folded);
  return {
    said: text,
    folded,
    key,
    ...(number === undefined ? {} : { number }),
    series: inName ? series.filter(begins).map(({ slug }) => slug) : [],
  };
}

/** The longest run of words from there that is the whole name of a series; one word of letters alone may mean much else. */
function namedAt(
  tokens: readonly Token[],
  at: number,
  series: readonly SearchedSeries[],
): (NamedSeries & { readonly length: number }) | undefined {
  for (let length = Math.min(NAME, tokens.length - at); length > 0; length--) {
    const run = tokens.slice(at, at + length);
    const said = run.map(({ text }) => text).join(" ");
    const key = keyOf(said);
    if (run.some(({ quoted }) => quoted) || (length === 1 && !/\d/.test(key))) continue;
    const slugs = series.filter(({ name }) => keyOf(name) === key).map(({ slug }) => slug);
    if (slugs.length > 0) return { said, series: slugs, length };
  }
  return undefined;
}

/**
 * Reads what somebody looks for. Words that are together the name of one of the club's series mean the series, unless in
 * quotation marks; a chassis number may be written without its leading zeros. Nothing is left of a search of signs alone.
 */
export function readSearch(search: string, series: readonly SearchedSeries[] = []): Searched {
  const tokens = tokensOf(search);
  const words: Word[] = [];
  const named: NamedSeries[] = [];
  const passedOver: string[] = [];
  for (let at = 0; at < tokens.length; ) {
    const name = namedAt(tokens, at, series);
    const token = tokens[at];
    if (name) {
      const { length, ...one } = name;
      named.push(one);
      at += length;
      continue;
    }
    at += 1;
    if (!token) continue;
    const word = wordOf(token, series);
    if (words.some(({ folded }) => folded === word.folded)) continue;
    if (words.length < WORDS) words.push(word);
    else passedOver.push(word.said);
  }
  return { words, named, passedOver };
}
