import type { Characteristic } from "../characteristic/characteristic";
import { sayDay } from "../identity/say-day";
import type { ValueAxis } from "./axis";

/** How many of some values stand how against factory. */
export interface Standing {
  readonly asSpecified: number;
  readonly differs: number;
  /** A period option, an accepted substitute, or one of which the measurement cannot tell. */
  readonly accepted: number;
  /** Nothing is specified to compare it with. */
  readonly notCompared: number;
}

/** In the order in which a bar stacks them and a table names them. */
export const standings = ["asSpecified", "accepted", "differs", "notCompared"] as const;

export const standingWords: Readonly<Record<keyof Standing, string>> = {
  asSpecified: "as specified or inside limits",
  accepted: "accepted, or cannot tell",
  differs: "differs",
  notCompared: "nothing to compare with",
};

/** One value, or one class of values, with how many there are. */
export interface SpreadRow extends Standing {
  readonly label: string;
  readonly count: number;
  /** Along the axis: where a class begins and ends, or twice the value. */
  readonly from?: number;
  readonly to?: number;
}

/** Where the values of one year lie, along the axis and said. */
export interface YearQuartiles {
  readonly year: number;
  readonly count: number;
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
  /** "-0°45' (-1°10' to -0°20')" */
  readonly said: string;
}

/** How many of each kind of value there were in a year; one count for each name, the last for all others. */
export interface YearShares {
  readonly year: number;
  readonly count: number;
  readonly counts: readonly number[];
}

/** Values over the years: quartiles of quantities, shares of what is named. */
export type YearTable =
  | { readonly as: "quartiles"; readonly rows: readonly YearQuartiles[] }
  | { readonly as: "shares"; readonly names: readonly string[]; readonly rows: readonly YearShares[] };

/** A year's row as a database gives it: a quantity without text, or one kind of value. */
export interface YearRow {
  readonly year: number;
  readonly text: string | null;
  readonly count: number;
  readonly lower: number | null;
  readonly median: number | null;
  readonly upper: number | null;
}

/** Kinds of value that are told apart in a picture by hatching; the rest is "other". */
export const hatchings = 4;

/** What a kept text is called: a choice by its label, a date in words, a designation as it is. */
export function sayKept(characteristic: Characteristic, text: string): string {
  if (characteristic.kind === "choice")
    return characteristic.choices.find(({ code }) => code === text)?.label ?? text;
  return characteristic.kind === "date" ? sayDay(text) : text;
}

/** A step along an axis fine enough for a quartile of values read to that step. */
const finer = (step: number) => step / 2;

function quartiles(rows: readonly YearRow[], axis: ValueAxis, step: number): YearTable {
  const told = rows.flatMap(({ year, count, lower, median, upper }) => {
    if (lower === null || median === null || upper === null) return [];
    const [from, middle, to] = [axis.toAxis(lower), axis.toAxis(median), axis.toAxis(upper)];
    const say = (place: number) => axis.say(place, finer(step));
    const said = `${say(middle)} (${say(from)} to ${say(to)})`;
    return [{ year, count, lower: from, median: middle, upper: to, said }];
  });
  return { as: "quartiles", rows: told };
}

function shares(rows: readonly YearRow[], characteristic: Characteristic): YearTable {
  const totals = new Map<string, number>();
  for (const { text, count } of rows) totals.set(text ?? "", (totals.get(text ?? "") ?? 0) + count);
  const ordered = [...totals].sort(([a, many], [b, others]) => others - many || (a < b ? -1 : 1));
  const named = ordered.slice(0, hatchings).map(([text]) => text);
  const years = [...new Set(rows.map(({ year }) => year))].sort((a, b) => a - b);
  const told = years.map((year) => {
    const own = rows.filter((row) => row.year === year);
    const count = own.reduce((sum, row) => sum + row.count, 0);
    const counts = named.map((text) => own.find((row) => (row.text ?? "") === text)?.count ?? 0);
    return { year, count, counts: [...counts, count - counts.reduce((sum, one) => sum + one, 0)] };
  });
  const names = named.map((text) => sayKept(characteristic, text));
  return { as: "shares", names: [...names, "other"], rows: told };
}

/**
 * Values by year as a table and picture need them.
 *
 * @param axis of a quantity; without one the values are counted by kind
 * @param step along the axis to which the values were read
 */
export function yearTable(
  rows: readonly YearRow[],
  characteristic: Characteristic,
  axis?: { readonly along: ValueAxis; readonly step: number },
): YearTable {
  return axis === undefined ? shares(rows, characteristic) : quartiles(rows, axis.along, axis.step);
}
