import { dayOf, daysInMonth, partsOfDay } from "./calendar";

/** The days a plain date allows, both included; `circa` where the notation itself is a rough span. */
export interface DateSpan {
  readonly earliest: string;
  readonly latest: string;
  readonly precision: "day" | "month" | "year" | "circa";
}

const monthNames = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
];
/** First and last month; winter spans two years and is not read. */
const partsOfYear: Readonly<Record<string, readonly [number, number]>> = {
  spring: [3, 5],
  summer: [6, 8],
  autumn: [9, 11],
  early: [1, 4],
  mid: [5, 8],
  late: [9, 12],
};

function monthNamed(name: string): number {
  const small = name.toLowerCase();
  return small.length < 3 ? 0 : monthNames.findIndex((month) => month.startsWith(small)) + 1;
}

/** A two-digit year this close ahead is more likely a slip or a plan than a year of the last century. */
const yearsAhead = 10;

/** Two digits are of this century up to ten years from today, which the caller then refuses; else of the last. */
function yearOf(text: string, today: string): number {
  const number = Number(text);
  if (text.length > 2) return number;
  return 2000 + number <= partsOfDay(today).year + yearsAhead ? 2000 + number : 1900 + number;
}

function exactDay(year: number, month: number, day: number): DateSpan | undefined {
  const iso = dayOf(year, month, day);
  return iso === undefined ? undefined : { earliest: iso, latest: iso, precision: "day" };
}

function months(year: number, from: number, to: number, lastYear = year): DateSpan | undefined {
  const earliest = dayOf(year, from, 1);
  const latest = dayOf(lastYear, to, to >= 1 && to <= 12 ? daysInMonth(lastYear, to) : 0);
  if (earliest === undefined || latest === undefined || latest < earliest) return undefined;
  return { earliest, latest, precision: "month" };
}

function years(from: number, to: number, precision: "year" | "circa"): DateSpan | undefined {
  const span = months(from, 1, 12, to);
  return span && { ...span, precision };
}

function partOfYear(name: string, year: number): DateSpan | undefined {
  const part = partsOfYear[name.toLowerCase()];
  const [from, to] = part ?? [monthNamed(name), monthNamed(name)];
  return months(year, from, to);
}

interface Notation {
  readonly pattern: RegExp;
  readonly span: (parts: readonly [string, string, string], today: string) => DateSpan | undefined;
}

/** Day before month, as the trade here writes it; a year of four digits may come first. */
const notations: readonly Notation[] = [
  {
    pattern: /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/,
    span: ([y, m, d]) => exactDay(Number(y), Number(m), Number(d)),
  },
  {
    pattern: /^(\d{1,2})[./-](\d{1,2})[./-](\d{4}|\d{2})$/,
    span: ([d, m, y], today) => exactDay(yearOf(y, today), Number(m), Number(d)),
  },
  {
    pattern: /^(\d{1,2})(?:st|nd|rd|th|\.)?[ -]?([a-z]{3,9})\.?[ -]?(\d{4}|\d{2})$/i,
    span: ([d, name, y], today) => exactDay(yearOf(y, today), monthNamed(name), Number(d)),
  },
  {
    pattern: /^([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/i,
    span: ([name, d, y]) => exactDay(Number(y), monthNamed(name), Number(d)),
  },
  {
    pattern: /^(\d{1,2})[./-](\d{4}|\d{2})()$/,
    span: ([m, y], today) => months(yearOf(y, today), Number(m), Number(m)),
  },
  {
    pattern: /^([a-z]{3,9})\.?[ -](\d{4}|\d{2})()$/i,
    span: ([name, y], today) => partOfYear(name, yearOf(y, today)),
  },
  { pattern: /^(\d{4})()()$/, span: ([y]) => years(Number(y), Number(y), "year") },
  {
    pattern: /^(\d{3})0['’]?s()()$/,
    span: ([decade]) => years(Number(`${decade}0`), Number(`${decade}9`), "circa"),
  },
  {
    pattern: /^(?:between )?(\d{4}) ?(?:-|–|\/|to|and) ?(\d{4})()$/i,
    span: ([from, to]) => years(Number(from), Number(to), "circa"),
  },
  { pattern: /^(\d{4})[-/.](\d{2})()$/, span: ([y, next]) => yearAndNext(y, next) },
];

/** 1972-03 is March; 1971/72, where the second is no month, are the two years. */
function yearAndNext(year: string, next: string): DateSpan | undefined {
  const number = Number(next);
  if (number <= 12) return months(Number(year), number, number);
  return years(Number(year), Number(`${year.slice(0, 2)}${next}`), "circa");
}

/** Reads a date without words of doubt: a day, month, season, part of a year, year, span of years or decade. */
export function readDateSpan(text: string, today: string): DateSpan | undefined {
  for (const { pattern, span } of notations) {
    const match = pattern.exec(text);
    if (match !== null) return span([match[1] ?? "", match[2] ?? "", match[3] ?? ""], today);
  }
  return undefined;
}
