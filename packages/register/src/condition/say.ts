import { assemblyLabels } from "../characteristic/assembly-label";
import type { CharacteristicBook } from "../characteristic/book";
import type { Side } from "../characteristic/characteristic";
import type { Verdict } from "../deviation/deviation";
import { verdictWords } from "../deviation/line";
import { sayDay } from "../identity/say-day";
import type { UnitSystem } from "../value/print";
import type { Comparison, Condition, Knowable } from "./condition";
import { exactFigure } from "./figure";

/** How a number stands to another, in a sentence. */
export const numberWords: Readonly<Record<Comparison, string>> = {
  eq: "is",
  ne: "is not",
  lt: "is below",
  le: "is at most",
  gt: "is above",
  ge: "is at least",
};
/** How a day stands to another, in a sentence. */
export const dateWords: Readonly<Record<Comparison, string>> = {
  eq: "is on",
  ne: "is not on",
  lt: "is before",
  le: "is on or before",
  gt: "is after",
  ge: "is on or after",
};
/** How a multiple stands to another, in a sentence. */
export const timesWords: Readonly<Record<Comparison, string>> = {
  eq: "is",
  ne: "is not",
  lt: "is less than",
  le: "is at most",
  gt: "is more than",
  ge: "is at least",
};

const or = (words: readonly string[]) =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.slice(-1).join("")}`;

/** "inUse" is "in use". */
const spaced = (code: string) => code.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** A label within a sentence: its capital goes, unless it belongs to an abbreviation. */
const within = (label: string) =>
  /^[A-Z][^A-Z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;

/** What the words lean on beside the dictionary. */
export interface SayOptions {
  /** How the series are called, by short name; where one is left out its short name stands. */
  readonly series?: ReadonlyMap<string, string>;
  /** Units of figures; metric when left out. */
  readonly system?: UnitSystem;
  /** What the day asked about is called: "the day of the event" when left out. */
  readonly day?: string;
}

interface Wording extends Required<SayOptions> {
  readonly book: CharacteristicBook;
}

function labelOf(key: string, side: Side | undefined, { book }: Wording): string {
  const label = within(book.find(key)?.label ?? key);
  return side === "left" || side === "right" ? `${side} ${label}` : label;
}

/** The number in the characteristic's unit, to the letter; plain where it has none. */
function figure(key: string, si: number, { book, system }: Wording): string {
  const characteristic = book.find(key);
  return characteristic?.kind === "quantity" ? exactFigure(characteristic, si, system) : String(si);
}

function choices(key: string, codes: readonly string[], { book }: Wording): string {
  const characteristic = book.find(key);
  const list = characteristic?.kind === "choice" ? characteristic.choices : [];
  return or(codes.map((code) => within(list.find((choice) => choice.code === code)?.label ?? code)));
}

function sayBuilt({ from, to }: Extract<Condition, { readonly op: "built" }>): string {
  if (from !== undefined && to !== undefined) return `built from ${sayDay(from)} to ${sayDay(to)}`;
  if (from !== undefined) return `built on or after ${sayDay(from)}`;
  return to === undefined ? "the build date is known" : `built on or before ${sayDay(to)}`;
}

function sayAgainst(
  { characteristic, side, measure, is, si }: Extract<Condition, { readonly op: "against" }>,
  wording: Wording,
): string {
  const label = labelOf(characteristic, side, wording);
  if (measure === "ratio") return `${label} ${timesWords[is]} ${si} times as specified`;
  return `${label} less the specified one ${numberWords[is]} ${figure(characteristic, si, wording)}`;
}

/** What may be known, in a sentence. */
export const knowableWords: Readonly<Record<Knowable, string>> = {
  series: "the series",
  status: "the status",
  decade: "the decade of building",
};

const assembliesOf = (codes: Extract<Condition, { readonly op: "modified" }>["in"]) =>
  or(codes.map((code) => within(assemblyLabels[code])));
const verdictsOf = (codes: readonly Verdict[]) => or(codes.map((verdict) => verdictWords[verdict]));

/** A decade from its first to its last day: its first year. */
function wholeDecade({
  from = "",
  to = "",
}: Extract<Condition, { readonly op: "built" }>): string | undefined {
  const [, year] = /^(\d{3}0)-01-01$/.exec(from) ?? [];
  return year !== undefined && to === `${Number(year) + 9}-12-31` ? year : undefined;
}

type About = Extract<Condition, { readonly characteristic: string }>;

function sayAbout(condition: About, wording: Wording): string {
  const { characteristic: key } = condition;
  const label = labelOf(key, "side" in condition ? condition.side : undefined, wording);
  switch (condition.op) {
    case "recorded":
      return `${label} is recorded`;
    case "absent":
      return `${label} is not fitted`;
    case "number":
      return `${label} ${numberWords[condition.is]} ${figure(key, condition.si, wording)}`;
    case "code":
      return `${label} is ${choices(key, condition.in, wording)}`;
    case "textHas":
      return `${label} contains "${condition.text}"`;
    case "date":
      return `${label} ${dateWords[condition.is]} ${condition.date === "eventDay" ? wording.day : sayDay(condition.date)}`;
    case "verdict":
      return `${label} against specification is ${verdictsOf(condition.in)}`;
    case "against":
      return sayAgainst(condition, wording);
    case "sidesDiffer":
      return condition.by === undefined || condition.by === 0
        ? `${label} differs from left to right`
        : `${label} differs from left to right by more than ${figure(key, condition.by, wording)}`;
    case "readingOlderThan":
      return `the latest reading of ${label} is more than ${condition.days} days old on ${wording.day}`;
  }
}

/** A part in brackets where its words would run into its neighbours'. */
function part(condition: Condition, wording: Wording): string {
  const several = (condition.op === "all" || condition.op === "any") && condition.of.length > 1;
  const said = say(condition, wording);
  return several ? `(${said})` : said;
}

function say(condition: Condition, wording: Wording): string {
  switch (condition.op) {
    case "always":
      return "every car";
    case "all":
      return condition.of.map((one) => part(one, wording)).join(" and ");
    case "any":
      return condition.of.map((one) => part(one, wording)).join(" or ");
    case "not":
      if (condition.of.op === "known") return `${knowableWords[condition.of.what]} is not known`;
      return `not (${say(condition.of, wording)})`;
    case "series":
      return `the series is ${or(condition.in.map((slug) => wording.series.get(slug) ?? slug))}`;
    case "status":
      return `the status is ${or(condition.in.map(spaced))}`;
    case "known":
      return `${knowableWords[condition.what]} is known`;
    case "anyVerdict":
      return `something recorded is ${verdictsOf(condition.in)}`;
    case "modified":
      return `a modification of ${assembliesOf(condition.in)} is recorded`;
    case "built":
      return sayBuilt(condition);
    default:
      return sayAbout(condition, wording);
  }
}

/**
 * A condition in plain words, as the form states it back: "rear anti-roll bar diameter is above 16 mm and the series
 * is Series 2". Keys that are not in the book stand as they are.
 */
export function sayCondition(
  condition: Condition,
  book: CharacteristicBook,
  { series = new Map(), system = "metric", day = "the day of the event" }: SayOptions = {},
): string {
  return say(condition, { book, series, system, day });
}

const what = (one: Knowable) => knowableWords[one].replace(/^the /, "");

function briefly(condition: Condition, wording: Wording): string {
  switch (condition.op) {
    case "series":
      return or(condition.in.map((slug) => wording.series.get(slug) ?? slug));
    case "status":
      return or(condition.in.map(spaced));
    case "built": {
      const decade = wholeDecade(condition);
      return decade === undefined ? sayBuilt(condition) : `built in the ${decade}s`;
    }
    case "anyVerdict":
      return `something ${verdictsOf(condition.in)}`;
    case "modified":
      return `${assembliesOf(condition.in)} modified`;
    case "verdict":
      return `${labelOf(condition.characteristic, condition.side, wording)} ${verdictsOf(condition.in)}`;
    case "known":
      return `${what(condition.what)} known`;
    case "not":
      return condition.of.op === "known" ? `${what(condition.of.what)} not known` : say(condition, wording);
    default:
      return say(condition, wording);
  }
}

/** One part of a condition in as few words as tell it apart: "Series 2", "laid up", "front camber outside limits". */
export function sayBriefly(
  condition: Condition,
  book: CharacteristicBook,
  { series = new Map(), system = "metric", day = "the day of the event" }: SayOptions = {},
): string {
  return briefly(condition, { book, series, system, day });
}
