import { shiftDays } from "../identity/calendar";

/** Year that a spreadsheet's day numbers count from: most count from 1900, old Macintosh workbooks from 1904. */
export const epochs = [1900, 1904] as const;
export type Epoch = (typeof epochs)[number];

/**
 * Day 0 of each count (ECMA-376 part 1, 18.17.4.1). The count from 1900 has a 29 February 1900 that never was, so from
 * March 1900 on it starts a day early; cars of a register are younger than that.
 */
const dayZero: Readonly<Record<Epoch, string>> = { 1900: "1899-12-30", 1904: "1904-01-01" };

/** Numbers that can be days from 1930 to the middle of this century; lower ones are years, higher ones phone numbers. */
const LOWEST = 10_959;
const HIGHEST = 55_000;

/**
 * The ISO day a bare number means as a spreadsheet's day number; nothing for a number that can be none, and for any
 * text. The fraction, a time of day, is passed over.
 *
 * @example dayOfSerial("26299", 1900) // => "1972-01-01"
 * @example dayOfSerial("24837", 1904) // => "1972-01-01"
 */
export function dayOfSerial(text: string, epoch: Epoch): string | undefined {
  const [, whole] = /^(\d{5})(?:[.,]\d+)?$/.exec(text) ?? [];
  const serial = Number(whole ?? Number.NaN);
  if (!(serial >= LOWEST && serial <= HIGHEST)) return undefined;
  return shiftDays(dayZero[epoch], serial);
}

/** What to say of a number under a date's heading that may be a day number; nothing for any other entry. */
export function saySerial(text: string): string | undefined {
  const days = epochs.map((epoch) => dayOfSerial(text, epoch));
  if (days.some((day) => day === undefined)) return undefined;
  return `a date; as a spreadsheet's day number it is ${days[0]} counted from 1900 or ${days[1]} counted from 1904: say which for the column`;
}
