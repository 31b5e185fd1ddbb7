import { parsePartialDate } from "../identity/partial-date";

/** A calendar date of a label or certificate, or what would have been understood. */
export type DateEntry =
  | { readonly ok: true; readonly date: string }
  | { readonly ok: false; readonly expected: string };

/** Certificates run into the future, none beyond this. */
const HORIZON = "2099-12-31";
const expected = "a day, month or year, e.g. 2027-06-30, 30.6.2027, 6/2027 or 2027; for a tyre DOT 1219";

const weekCode = /^(?:DOT(?:[ A-Z0-9-]*?[ -])? ?|week |wk\.? ?)(\d{2})(?: ?\/ ?(?:20)?| (?:20)?)?(\d{2})$/i;

/**
 * Monday of an ISO 8601 week: week 1 is the one with 4 January in it. Tyre makers count their weeks about so.
 */
function mondayOf(year: number, week: number): string {
  const fourth = new Date(Date.UTC(year, 0, 4));
  const weekday = (fourth.getUTCDay() + 6) % 7;
  const monday = new Date(Date.UTC(year, 0, 4 - weekday + 7 * (week - 1)));
  return monday.toISOString().slice(0, 10);
}

function readWeek(text: string): DateEntry | undefined {
  const [, week = "", year = ""] = weekCode.exec(text) ?? [];
  if (week === "") return undefined;
  const number = Number(week);
  if (number < 1 || number > 53)
    return { ok: false, expected: "a week from 01 to 53 before the year, DOT 1219" };
  return { ok: true, date: mondayOf(2000 + Number(year), number) };
}

/**
 * Reads a date from a label: a day; a month or a year, which stand for their last day, since what is dated so holds
 * to the end of it; or a tyre's date code, week and year since 2000, which stands for that week's Monday.
 * "Circa", "before" and "after" are refused: nothing can fall due on them.
 * @example parseDateEntry("6/2027") // => 2027-06-30
 */
export function parseDateEntry(entered: string): DateEntry {
  const week = readWeek(entered);
  if (week !== undefined) return week;
  const parsed = parsePartialDate(entered, { today: HORIZON });
  if (!parsed.ok) return { ok: false, expected };
  const { precision, latest } = parsed.date;
  const exact = precision === "day" || precision === "month" || precision === "year";
  return exact ? { ok: true, date: latest } : { ok: false, expected };
}
