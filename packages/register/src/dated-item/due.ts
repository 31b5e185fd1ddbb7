import { shiftDays } from "../identity/calendar";

/** Days ahead that count as soon. */
export const dueSoon = 90;

/** How a day of validity stands on another: over, within the next ninety days, later, or not known. */
export const dueStandings = ["past", "soon", "later", "unknown"] as const;
export type DueStanding = (typeof dueStandings)[number];

export const dueStandingWords: Readonly<Record<DueStanding, string>> = {
  past: "past",
  soon: "within 90 days",
  later: "later",
  unknown: "date not recorded",
};

/**
 * How something valid up to and with a day stands today. Unknown is never in order.
 *
 * @param validTo ISO day, its last; undefined where nobody has noted it
 * @param today ISO day
 */
export function dueStanding(validTo: string | undefined, today: string): DueStanding {
  if (validTo === undefined) return "unknown";
  if (validTo < today) return "past";
  return validTo <= shiftDays(today, dueSoon) ? "soon" : "later";
}

/** One cell of a month as a calendar draws it: Monday first; empty before the first day and after the last. */
export type MonthCell = string | undefined;

/**
 * The weeks of a month, seven cells each from Monday to Sunday (ISO 8601), with the ISO day in each.
 *
 * @param month "2026-12"
 * @throws RangeError for a text that is no month from 1900 to 2199
 */
export function monthWeeks(month: string): readonly (readonly MonthCell[])[] {
  const [, year = "", of = ""] = /^((?:19|20|21)\d\d)-(0[1-9]|1[0-2])$/.exec(month) ?? [];
  if (year === "") throw new RangeError(`"${month}" is no month such as 2026-12`);
  const first = new Date(Date.UTC(Number(year), Number(of) - 1, 1));
  const days = new Date(Date.UTC(Number(year), Number(of), 0)).getUTCDate();
  const before = (first.getUTCDay() + 6) % 7;
  const weeks = Math.ceil((before + days) / 7);
  return Array.from({ length: weeks }, (_, week) =>
    Array.from({ length: 7 }, (_unused, weekday) => {
      const day = week * 7 + weekday - before + 1;
      return day < 1 || day > days ? undefined : `${month}-${String(day).padStart(2, "0")}`;
    }),
  );
}

/** The month so many months later. */
export function shiftMonth(month: string, by: number): string {
  const [year = "0", of = "1"] = month.split("-");
  return new Date(Date.UTC(Number(year), Number(of) - 1 + by, 1)).toISOString().slice(0, 7);
}
