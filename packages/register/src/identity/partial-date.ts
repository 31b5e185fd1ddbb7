import { z } from "zod";
import { earliestDay, partsOfDay, shiftDays, shiftYears } from "./calendar";
import { type DateSpan, readDateSpan } from "./date-notation";

/** How far a date is known. */
export const datePrecisions = ["day", "month", "year", "circa", "before", "after"] as const;
export type DatePrecision = (typeof datePrecisions)[number];

/** A date as far as it is known: what was written, and the days it allows (ISO, both included). */
export interface PartialDate {
  readonly text: string;
  readonly earliest: string;
  readonly latest: string;
  readonly precision: DatePrecision;
}

export type DateProblemCode = "EMPTY" | "NOT_A_DATE" | "FUTURE" | "TOO_EARLY";

/** Why an entry is no date. */
export interface DateProblem {
  readonly code: DateProblemCode;
  /** A sentence that quotes the entry. */
  readonly message: string;
  readonly expected: string;
}

export type ParsedDate =
  | { readonly ok: true; readonly date: PartialDate }
  | { readonly ok: false; readonly problem: DateProblem };

/** Years either side that "circa" allows. */
export const circaYears = 1;
const lengthLimit = 40;

type Allowed = Omit<PartialDate, "text">;

interface Doubt {
  readonly pattern: RegExp;
  readonly allow: (span: DateSpan, today: string) => Allowed;
}

function circa({ earliest, latest }: DateSpan): Allowed {
  return {
    earliest: shiftYears(earliest, -circaYears),
    // By the day after, so that the end of February stays its end in a leap year.
    latest: shiftDays(shiftYears(shiftDays(latest, 1), circaYears), -1),
    precision: "circa",
  };
}

/** Words of doubt around a date. "Before" and "after" leave out the date itself, "by" and "since" do not. */
const doubts: readonly Doubt[] = [
  { pattern: /^(?:circa|about|approx(?:imately)?|around|ca?)\.? ?(?=[\d\p{L}])(.+)$/iu, allow: circa },
  { pattern: /^~ ?(.+)$/, allow: circa },
  { pattern: /^(.+?) ?\(?\?\)?$/, allow: circa },
  {
    pattern: /^(?:before|pre)[ -](.+)$/i,
    allow: ({ earliest }) => ({
      earliest: earliestDay,
      latest: shiftDays(earliest, -1),
      precision: "before",
    }),
  },
  {
    pattern: /^(?:by|until|not after) (.+)$/i,
    allow: ({ latest }) => ({ earliest: earliestDay, latest, precision: "before" }),
  },
  {
    pattern: /^(?:after|post)[ -](.+)$/i,
    allow: ({ latest }, today) => ({ earliest: shiftDays(latest, 1), latest: today, precision: "after" }),
  },
  {
    pattern: /^(?:since|from|not before) (.+)$/i,
    allow: ({ earliest }, today) => ({ earliest, latest: today, precision: "after" }),
  },
];

function read(text: string, today: string): Allowed | undefined {
  const plain = readDateSpan(text, today);
  if (plain !== undefined) return plain;
  for (const { pattern, allow } of doubts) {
    const span = readDateSpan(pattern.exec(text)?.[1] ?? "", today);
    if (span !== undefined) return allow(span, today);
  }
  return undefined;
}

const expected =
  "a date such as 1971, 3/72, March 1972, 12.3.1972 (day first), 1972-03-12, c. 1971 or before March 1972";

function refuse(code: DateProblemCode, message: string, right = expected): ParsedDate {
  return { ok: false, problem: { code, message, expected: right } };
}

/**
 * Reads a date as far as it is known. Day comes before month; two-digit years are of this century up to ten years
 * from today (and then refused as future), else of the last. "Circa", "~" and a question mark allow a year either side; "before" and "after" are open to 1900 and to
 * today. A season is three months, early, mid and late a third of the year; `1971/72` and `1970s` are all of those years.
 *
 * Refuses what lies wholly after today (a span that reaches beyond is cut there), and what lies before 1900.
 *
 * @param today ISO day
 * @throws RangeError if `today` is no ISO day
 * @example parsePartialDate("3/72", { today: "2026-01-01" }) // => 1972-03-01 to 1972-03-31
 */
export function parsePartialDate(entered: string, { today }: { readonly today: string }): ParsedDate {
  partsOfDay(today);
  const text = entered.trim().replace(/\s+/g, " ");
  if (text === "") return refuse("EMPTY", "no date is entered");
  const quoted = `"${text.slice(0, lengthLimit)}${text.length > lengthLimit ? "…" : ""}"`;
  const allowed = text.length > lengthLimit ? undefined : read(text, today);
  if (allowed === undefined) return refuse("NOT_A_DATE", `${quoted} is not a date that can be read`);
  if (allowed.earliest > today)
    return refuse(
      "FUTURE",
      `${quoted} lies in the future`,
      `a day up to ${today}, with the year in four figures`,
    );
  if (allowed.latest < earliestDay || (allowed.precision !== "before" && allowed.earliest < earliestDay)) {
    return refuse(
      "TOO_EARLY",
      `${quoted} lies before ${earliestDay.slice(0, 4)}`,
      `a day from ${earliestDay} on`,
    );
  }
  return { ok: true, date: { text, ...allowed, latest: allowed.latest > today ? today : allowed.latest } };
}

/** Reads a stored partial date; refuses a span that ends before it starts. */
export const partialDateSchema: z.ZodType<PartialDate> = z
  .strictObject({
    text: z.string().min(1).max(200),
    earliest: z.iso.date(),
    latest: z.iso.date(),
    precision: z.enum(datePrecisions),
  })
  .refine(({ earliest, latest }) => earliest <= latest, "the earliest day must not lie after the latest");
