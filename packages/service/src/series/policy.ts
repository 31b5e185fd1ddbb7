import {
  type EntryReading,
  explainNumber,
  foldName,
  type NumberPattern,
  numberPatternSchema,
  type Problems,
  parsePartialDate,
  sayDay,
} from "@trunnion/register";
import { z } from "zod";
import { lineInput } from "../entry-input";
import type { SeriesDetail } from "./read";

/** A series as a specification is held against it. */
export function seriesFacts(series: SeriesDetail): NonNullable<EntryReading["series"]> {
  const { name, pattern, builtFrom, builtTo, options } = series;
  return {
    name,
    pattern,
    options: options.map(({ code }) => code),
    firstSerial: pattern.first,
    lastSerial: pattern.last,
    builtFrom,
    builtTo,
  };
}

/** A short name for addresses; left empty, it is made of the name. */
const shortName = lineInput(40).regex(
  /^$|^[a-z0-9]+(-[a-z0-9]+)*$/,
  "small letters, digits and single dashes, as in series-2",
);
const wholeNumber = (most: number) =>
  z.coerce
    .number({ error: "expected a whole number" })
    .int("expected a whole number")
    .min(0, "expected 0 or more")
    .max(most, `expected at most ${most}`);

/** What a form says of a series; everything but its marque and short name may change later. */
export const seriesFields = {
  name: lineInput(80).min(1, "name the series as people do: Series 2"),
  ordinal: wholeNumber(999).default(0),
  numberPrefix: lineInput(12),
  numberDigits: wholeNumber(9),
  firstSerial: wholeNumber(999_999_999),
  lastSerial: wholeNumber(999_999_999),
  /** Parted by commas or blanks. */
  numberSuffixes: lineInput(200).default(""),
  builtFrom: lineInput(40),
  builtTo: lineInput(40),
  builtCount: lineInput(9).default(""),
  options: z
    .array(z.object({ code: lineInput(12).default(""), label: lineInput(80).default("") }))
    .max(100)
    .default([]),
} as const;

export const addSeriesForm = z.object({
  marque: lineInput(40).min(1),
  slug: shortName.default(""),
  ...seriesFields,
});
export type AddSeriesForm = z.infer<typeof addSeriesForm>;
export const addMarqueInput = z.object({
  slug: shortName.default(""),
  name: lineInput(80).min(1, "name the marque"),
});
export type AddMarqueInput = z.infer<typeof addMarqueInput>;

/** A name as an address may have it: "Série 2 GT" → "serie-2-gt"; empty where nothing is left. */
export function slugOf(name: string): string {
  return foldName(name)
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 40);
}

/** What a series is, read from its form. */
export interface SeriesFactsRead {
  readonly pattern: NumberPattern;
  readonly builtFrom: string;
  readonly builtTo: string;
  readonly builtCount: number | null;
  readonly options: readonly { readonly code: string; readonly label: string }[];
}

type SeriesFields = z.infer<z.ZodObject<typeof seriesFields>>;

const patternFields: Readonly<Record<string, string>> = {
  series: "name",
  prefix: "numberPrefix",
  digits: "numberDigits",
  first: "firstSerial",
  last: "lastSerial",
  suffixes: "numberSuffixes",
};

function readPattern(fields: SeriesFields, problems: Problems): NumberPattern {
  const pattern = {
    series: fields.name,
    prefix: fields.numberPrefix,
    digits: fields.numberDigits,
    first: fields.firstSerial,
    last: fields.lastSerial,
    suffixes: fields.numberSuffixes.split(/[\s,;]+/).filter((suffix) => suffix !== ""),
  };
  const read = numberPatternSchema.safeParse(pattern);
  for (const { path, message } of read.error?.issues ?? []) {
    problems.add(patternFields[String(path[0])] ?? "numberPrefix", message);
  }
  return pattern;
}

function readDay(fields: SeriesFields, field: "builtFrom" | "builtTo", problems: Problems): string {
  const text = fields[field];
  const today = /\d{4}/.test(text) ? "2099-12-31" : "2029-12-31";
  const parsed = parsePartialDate(text, { today });
  const right = "expected a day, month or year such as 1971-03-12, 3/71 or 1971";
  if (!parsed.ok) problems.add(field, `"${text}" is no date; ${right}`);
  if (!parsed.ok) return "";
  const { precision, earliest, latest } = parsed.date;
  if (precision === "circa" || precision === "before" || precision === "after") {
    problems.add(field, `"${text}" leaves open where the build ends; ${right}`);
  }
  return field === "builtFrom" ? earliest : latest;
}

function readOptions(fields: SeriesFields, problems: Problems): SeriesFactsRead["options"] {
  const seen = new Set<string>();
  return fields.options.flatMap(({ code, label }, index) => {
    if (code === "" && label === "") return [];
    if (code === "")
      problems.add(`options.${index}.code`, `"${label}" has no code; build records name it by one`);
    if (label === "") problems.add(`options.${index}.label`, `say what "${code}" was`);
    if (seen.has(code)) problems.add(`options.${index}.code`, `"${code}" is given twice`);
    seen.add(code);
    return [{ code, label }];
  });
}

/** Reads the form of a series, gathering everything that is wrong with it. */
export function readSeries(fields: SeriesFields, problems: Problems): SeriesFactsRead {
  const pattern = readPattern(fields, problems);
  const builtFrom = readDay(fields, "builtFrom", problems);
  const builtTo = readDay(fields, "builtTo", problems);
  if (builtFrom !== "" && builtTo !== "" && builtFrom > builtTo) {
    problems.add("builtTo", `the build ends ${builtTo}, before it begins ${builtFrom}`);
  }
  const isCount = /^\d+$/.test(fields.builtCount);
  if (fields.builtCount !== "" && !isCount) problems.add("builtCount", "expected a whole number, or nothing");
  const builtCount = isCount ? Number(fields.builtCount) : null;
  return { pattern, builtFrom, builtTo, builtCount, options: readOptions(fields, problems) };
}

/** What of a car a series speaks of. */
export interface SeriesCar {
  readonly chassis: string;
  readonly built?: { readonly earliest: string; readonly latest: string };
  readonly options: readonly string[];
}

type Held = Pick<SeriesDetail, "pattern" | "builtFrom" | "builtTo" | "options">;

const isBuiltIn = ({ built }: SeriesCar, { builtFrom, builtTo }: Held) =>
  built === undefined || (built.latest >= builtFrom && built.earliest <= builtTo);

/**
 * Why a car that fits its series now would no longer fit; nothing where it would, or does not fit now either: what is
 * wrong with a record already must not hold up a correction.
 */
export function fallsOutside(car: SeriesCar, now: Held, wanted: Held): string | undefined {
  const [was, is] = [explainNumber(car.chassis, now.pattern), explainNumber(car.chassis, wanted.pattern)];
  if (was.ok && !is.ok) return `${car.chassis}: ${is.problem}`;
  if (isBuiltIn(car, now) && !isBuiltIn(car, wanted) && car.built !== undefined) {
    const { earliest, latest } = car.built;
    const span = earliest === latest ? sayDay(earliest) : `${sayDay(earliest)} to ${sayDay(latest)}`;
    return `${car.chassis}: built ${span}`;
  }
  const codes = (held: Held) => new Set(held.options.map(({ code }) => code));
  const gone = car.options.find((code) => codes(now).has(code) && !codes(wanted).has(code));
  return gone === undefined ? undefined : `${car.chassis}: has option ${gone}`;
}
