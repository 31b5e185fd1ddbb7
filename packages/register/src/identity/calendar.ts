/** No car, letter or certificate of a register is older. "Before" is open down to here. */
export const earliestDay = "1900-01-01";

const isoDay = /^(\d{4})-(\d{2})-(\d{2})$/;
const pad = (number: number) => String(number).padStart(2, "0");

/** Days of a month, 1 to 12, in the Gregorian calendar. */
export function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/** The ISO day of a year, month and day; `undefined` where the calendar has no such day. Years 1000 to 9999. */
export function dayOf(year: number, month: number, day: number): string | undefined {
  if (year < 1000 || year > 9999 || month < 1 || month > 12 || day < 1) return undefined;
  return day > daysInMonth(year, month) ? undefined : `${year}-${pad(month)}-${pad(day)}`;
}

/**
 * Year, month and day of an ISO day.
 * @throws RangeError for a text that is no day of the calendar
 */
export function partsOfDay(iso: string): {
  readonly year: number;
  readonly month: number;
  readonly day: number;
} {
  const [, year = "", month = "", day = ""] = isoDay.exec(iso) ?? [];
  const parts = { year: Number(year), month: Number(month), day: Number(day) };
  if (dayOf(parts.year, parts.month, parts.day) === iso) return parts;
  throw new RangeError(`"${iso}" is no ISO day such as 1972-03-12`);
}

/** The day so many days later (earlier, if negative). */
export function shiftDays(iso: string, days: number): string {
  const { year, month, day } = partsOfDay(iso);
  return new Date(Date.UTC(year, month - 1, day + days)).toISOString().slice(0, 10);
}

/** The same day so many years later; 29 February becomes the 28th where the year has none. */
export function shiftYears(iso: string, years: number): string {
  const { year, month, day } = partsOfDay(iso);
  const moved = year + years;
  return `${moved}-${pad(month)}-${pad(Math.min(day, daysInMonth(moved, month)))}`;
}

/** Whole days from one ISO day to another; negative when the other is earlier. */
export function daysBetween(from: string, to: string): number {
  const time = ({ year, month, day }: ReturnType<typeof partsOfDay>) => Date.UTC(year, month - 1, day);
  return Math.round((time(partsOfDay(to)) - time(partsOfDay(from))) / 86_400_000);
}
