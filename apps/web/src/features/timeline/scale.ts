import {
  dayOf,
  daysBetween,
  daysInMonth,
  earliestDay,
  partsOfDay,
  type TimelineEvent,
} from "@trunnion/register";

/** Days from left to right over the whole drawing. */
export interface TimeScale {
  /** ISO days at the two edges. */
  readonly from: string;
  readonly to: string;
  /** Whole days between them; at least 1. */
  readonly days: number;
  /** Place of a day in per cent of the width; a day beyond an edge stands at it. */
  readonly at: (day: string) => number;
}

export function timeScale(from: string, to: string): TimeScale {
  const days = Math.max(1, daysBetween(from, to));
  const at = (day: string) =>
    Math.round((Math.min(days, Math.max(0, daysBetween(from, day))) / days) * 1e4) / 100;
  return { from, to, days, at };
}

const least = (days: readonly string[]) => days.toSorted()[0] ?? "";

/**
 * From the beginning of the year in which the life begins to today. An open "before" does not count: it would draw a
 * century of nothing.
 */
export function lifeScale(events: readonly TimelineEvent[], today: string): TimeScale {
  const starts = events.flatMap(({ when }) => {
    if (when === undefined) return [];
    return when.earliest > earliestDay ? [when.earliest] : [when.latest];
  });
  const first = least([today, ...starts]);
  return timeScale(`${first.slice(0, 4)}-01-01`, today);
}

export interface YearTick {
  readonly year: number;
  /** Per cent of the width. */
  readonly at: number;
  /** Its label is left out where there is little room. */
  readonly minor: boolean;
}

const steps = [1, 2, 5, 10, 20, 50];
/** Labels that fit on a desk; on a phone every second one. */
const MOST_TICKS = 12;

/** Round years for the scale's labels. */
export function yearTicks(scale: TimeScale): readonly YearTick[] {
  const [first, last] = [partsOfDay(scale.from).year, partsOfDay(scale.to).year];
  const step = steps.find((one) => (last - first) / one <= MOST_TICKS) ?? 50;
  const start = Math.ceil(first / step) * step;
  const years = Array.from(
    { length: Math.max(0, Math.floor((last - start) / step) + 1) },
    (_, n) => start + n * step,
  );
  return years.map((year) => ({
    year,
    at: scale.at(`${year}-01-01`),
    minor: (year / step) % 2 !== 0,
  }));
}

/** The same day so many months on, or the last of its month. */
export function shiftMonths(day: string, months: number): string {
  const parts = partsOfDay(day);
  const index = parts.year * 12 + parts.month - 1 + months;
  const [year, month] = [Math.floor(index / 12), (index % 12) + 1];
  return dayOf(year, month, Math.min(parts.day, daysInMonth(year, month))) ?? day;
}

/** An event as the drawing places it. */
export interface Mark {
  readonly event: TimelineEvent;
  /** Row within its lane, from 0. */
  readonly row: number;
}

/** Rows a lane may have; what comes after shares the last. */
const MOST_ROWS = 5;

/**
 * What happened stands in the first row; what lasted lies below it, and what lies over each other in time in rows of its
 * own: marks of one time under each other.
 */
export function inRows(events: readonly TimelineEvent[], scale: TimeScale): readonly Mark[] {
  const ends: number[] = events.some(({ until }) => until === undefined) ? [Number.POSITIVE_INFINITY] : [];
  return events.map((event) => {
    if (event.until === undefined) return { event, row: 0 };
    const start = event.when === undefined ? 0 : scale.at(event.when.earliest);
    const end = event.until === "open" ? 100 : scale.at(event.until.latest);
    const free = ends.findIndex((taken) => taken <= start);
    const row = Math.min(free === -1 ? ends.length : free, MOST_ROWS - 1);
    ends[row] = Math.max(ends[row] ?? 0, end);
    return { event, row };
  });
}
