/** How far a date is known. */
export type DatePrecision = "day" | "month" | "year" | "circa" | "before" | "after";

/** A date as far as it is known: what was written, and the days it allows (ISO, both included). */
export interface PartialDate {
  readonly text: string;
  readonly earliest: string;
  readonly latest: string;
  readonly precision: DatePrecision;
}

export type ParsedDate =
  | { readonly ok: true; readonly date: PartialDate }
  | { readonly ok: false; readonly problem: { readonly message: string; readonly expected: string } };

interface Span {
  readonly earliest: string;
  readonly latest: string;
  readonly precision: "day" | "month" | "year";
}

/** No car, letter or certificate is older. */
const EARLIEST = "1900-01-01";
/** Years either side that "circa" allows. */
const CIRCA_YEARS = 1;

const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const seasons: Readonly<Record<string, readonly [number, number]>> = {
  spring: [3, 5],
  summer: [6, 8],
  autumn: [9, 11],
};

const pad = (number: number) => String(number).padStart(2, "0");
const lastDay = (year: number, month: number) => new Date(Date.UTC(year, month, 0)).getUTCDate();

function year(text: string): number {
  const number = Number(text);
  return text.length === 2 ? 1900 + number : number;
}

function dayIn(y: number, month: number, day: number): Span | undefined {
  if (month < 1 || month > 12 || day < 1 || day > lastDay(y, month)) return undefined;
  const iso = `${y}-${pad(month)}-${pad(day)}`;
  return { earliest: iso, latest: iso, precision: "day" };
}

function monthsIn(y: number, from: number, to: number): Span | undefined {
  if (from < 1 || to > 12) return undefined;
  return {
    earliest: `${y}-${pad(from)}-01`,
    latest: `${y}-${pad(to)}-${pad(lastDay(y, to))}`,
    precision: "month",
  };
}

const monthNamed = (name: string) => months.indexOf(name.toLowerCase().slice(0, 3)) + 1;

interface Notation {
  readonly pattern: RegExp;
  readonly span: (parts: readonly string[]) => Span | undefined;
}

/** The notations, each with how its parts make a span; day before month, as the trade here writes it. */
const notations: readonly Notation[] = [
  {
    pattern: /^(\d{4})-(\d{1,2})-(\d{1,2})$/,
    span: ([y = "", m = "", d = ""]) => dayIn(year(y), Number(m), Number(d)),
  },
  { pattern: /^(\d{4})-(\d{1,2})$/, span: ([y = "", m = ""]) => monthsIn(year(y), Number(m), Number(m)) },
  {
    pattern: /^(\d{1,2})[./](\d{1,2})[./](\d{4}|\d{2})$/,
    span: ([d = "", m = "", y = ""]) => dayIn(year(y), Number(m), Number(d)),
  },
  {
    pattern: /^(\d{1,2})[./](\d{4}|\d{2})$/,
    span: ([m = "", y = ""]) => monthsIn(year(y), Number(m), Number(m)),
  },
  {
    pattern: /^(\d{1,2})\.? ([a-z]{3,9})\.? (\d{4}|\d{2})$/i,
    span: ([d = "", name = "", y = ""]) => dayIn(year(y), monthNamed(name), Number(d)),
  },
  {
    pattern: /^([a-z]{3,9})\.? (\d{4})$/i,
    span: ([name = "", y = ""]) => {
      const [from, to] = seasons[name.toLowerCase()] ?? [monthNamed(name), monthNamed(name)];
      return monthsIn(year(y), from, to);
    },
  },
  {
    pattern: /^(\d{4})$/,
    span: ([y = ""]) => ({ earliest: `${y}-01-01`, latest: `${y}-12-31`, precision: "year" }),
  },
];

function spanOf(text: string): Span | undefined {
  for (const { pattern, span } of notations) {
    const [, ...parts] = pattern.exec(text) ?? [];
    if (parts.length > 0) return span(parts);
  }
  return undefined;
}

const dayBefore = (iso: string) => shifted(iso, -1);
const dayAfter = (iso: string) => shifted(iso, 1);

function shifted(iso: string, days: number): string {
  const instant = new Date(`${iso}T00:00:00Z`);
  instant.setUTCDate(instant.getUTCDate() + days);
  return instant.toISOString().slice(0, 10);
}

function years(iso: string, by: number): string {
  const [y = "", m = "", d = ""] = iso.split("-");
  const moved = Number(y) + by;
  return `${moved}-${m}-${pad(Math.min(Number(d), lastDay(moved, Number(m))))}`;
}

type Allowed = Pick<PartialDate, "earliest" | "latest" | "precision">;

/** What a word before a date makes of it. */
function qualified(word: string, span: Span, today: string): Allowed {
  switch (word) {
    case "c":
      return {
        earliest: years(span.earliest, -CIRCA_YEARS),
        latest: years(span.latest, CIRCA_YEARS),
        precision: "circa",
      };
    case "before":
      return { earliest: EARLIEST, latest: dayBefore(span.earliest), precision: "before" };
    case "after":
      return { earliest: dayAfter(span.latest), latest: today, precision: "after" };
    default:
      return span;
  }
}

const QUALIFIER = /^(?:(c|ca|circa|about|approx)\.? ?|(before|pre|by) |(after|post|since) )?(.+)$/i;

function qualifierOf(match: RegExpExecArray): string {
  if (match[1] !== undefined) return "c";
  if (match[2] !== undefined) return "before";
  return match[3] === undefined ? "" : "after";
}

const expected = "a date such as 1971, 3/72, March 1972, 12.3.1972, 1972-03-12, c. 1971 or before March 1972";

/**
 * Reads a date as far as it is known. Two-digit years are of the 1900s. "Circa" allows a year either side;
 * "before" and "after" leave the other end open to 1900 and today.
 *
 * @param options.today ISO day; what lies wholly after it is refused
 * @example parsePartialDate("3/72", { today: "2026-01-01" }) // => 1972-03-01 to 1972-03-31
 */
export function parsePartialDate(entered: string, { today }: { readonly today: string }): ParsedDate {
  const text = entered.trim().replace(/\s+/g, " ");
  const match = QUALIFIER.exec(text);
  const span = match && text.length <= 40 ? spanOf(match[4] ?? "") : undefined;
  if (!match || !span) {
    return { ok: false, problem: { message: `"${entered}" is not a date that can be read`, expected } };
  }
  const allowed = qualified(qualifierOf(match), span, today);
  if (allowed.earliest > today || span.earliest > today) {
    return {
      ok: false,
      problem: { message: `"${entered}" lies in the future`, expected: `a day up to ${today}` },
    };
  }
  if (allowed.latest < EARLIEST || allowed.earliest > allowed.latest) {
    return { ok: false, problem: { message: `"${entered}" is before ${EARLIEST.slice(0, 4)}`, expected } };
  }
  return { ok: true, date: { text, ...allowed, latest: allowed.latest > today ? today : allowed.latest } };
}
