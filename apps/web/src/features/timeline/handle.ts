import { dayOf, daysBetween, shiftDays } from "@trunnion/register";
import { shiftMonths, type TimeScale } from "./scale";

/** A day of the scale by its place from the left, in days. */
export const dayAt = (scale: TimeScale, place: number): string =>
  shiftDays(scale.from, Math.min(scale.days, Math.max(0, Math.round(place))));

export const placeOf = (scale: TimeScale, day: string): number =>
  Math.min(scale.days, Math.max(0, daysBetween(scale.from, day)));

/** What a key does to the handle: arrows go by a month, with Shift by a day, Page Up and Page Down by a year. */
const keys: Readonly<Record<string, { readonly months: number; readonly days: number }>> = {
  ArrowLeft: { months: -1, days: -1 },
  ArrowDown: { months: -1, days: -1 },
  ArrowRight: { months: 1, days: 1 },
  ArrowUp: { months: 1, days: 1 },
  PageDown: { months: -12, days: -7 },
  PageUp: { months: 12, days: 7 },
};

/** The day a key leads to; `undefined` for a key that the handle leaves alone. */
export function dayByKey(
  scale: TimeScale,
  day: string,
  { key, shiftKey }: { readonly key: string; readonly shiftKey: boolean },
): string | undefined {
  if (key === "Home") return scale.from;
  if (key === "End") return scale.to;
  const step = keys[key];
  if (step === undefined) return undefined;
  const moved = shiftKey ? shiftDays(day, step.days) : shiftMonths(day, step.months);
  return within(scale, moved);
}

/** The day, or the edge it lies beyond. */
export function within({ from, to }: TimeScale, day: string): string {
  if (day < from) return from;
  return day > to ? to : day;
}

/** A day on which something happened, where one lies within so many days of the place; else the place itself. */
export function snapped(day: string, turns: readonly string[], reach: number): string {
  const near = turns
    .map((turn) => ({ turn, distance: Math.abs(daysBetween(turn, day)) }))
    .filter(({ distance }) => distance <= reach)
    .sort((a, b) => a.distance - b.distance);
  return near[0]?.turn ?? day;
}

const isoDay = /^(\d{4})-(\d{2})-(\d{2})$/;

/** What an address or a field asks for, where it is a day of the calendar between the two. */
export function askedDay(text: string | undefined, from: string, to: string): string | undefined {
  const [, year = "", month = "", day = ""] = isoDay.exec(text ?? "") ?? [];
  const known = dayOf(Number(year), Number(month), Number(day));
  return known !== undefined && known >= from && known <= to ? known : undefined;
}
