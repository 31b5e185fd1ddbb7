import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import type { NumberPattern } from "../identity/number";
import type { Problems } from "../refusal/invalid";
import { parseValue } from "../value/parse";
import { spotOf } from "./feature";
import type { PartFeature, PartFeatureKind, PartFit, PartFitStanding } from "./part";

/** One row of a part's form, as typed. */
export interface FeatureRow {
  /** A characteristic's name, or the spot it is at. */
  readonly about: string;
  /** Only read where `about` is no characteristic's name. */
  readonly kind: PartFeatureKind;
  readonly value: string;
  readonly tells: boolean;
}

const length = {
  kind: "quantity",
  dimension: "length",
  units: { metric: "mm", imperial: "in" },
} as const;
const written = { kind: "text", maximumLength: 120 } as const;
const kinds = {
  thread: { kind: "designation", designation: "thread" },
  length,
  diameter: length,
  offset: length,
  stop: written,
  other: written,
} as const;

/** What a feature outside the dictionary is read as. */
function characteristicFor(kind: Exclude<PartFeatureKind, "characteristic">, label: string): Characteristic {
  const common = {
    key: kind,
    label,
    assembly: "chassis",
    sided: false,
    setting: false,
    removable: true,
  } as const;
  return { ...common, ...kinds[kind], help: "" };
}

function readFeature(row: FeatureRow, place: string, of: { book: CharacteristicBook; problems: Problems }) {
  const { about, value, tells } = row;
  if (about === "" && value === "") return [];
  if (about === "")
    of.problems.add(`${place}.about`, "Say what it is: a characteristic, or where on the part.");
  if (value === "") of.problems.add(`${place}.value`, `Say what "${about}" is on this part, or empty both.`);
  if (about === "" || value === "") return [];
  const named = of.book.named(about);
  if (!named && row.kind === "characteristic") {
    const message = `"${about}" is no characteristic of the dictionary: choose one, or choose what kind of thing it is.`;
    of.problems.add(`${place}.about`, message);
    return [];
  }
  if (!named && tells) {
    of.problems.add(
      `${place}.tells`,
      "Only a characteristic of the dictionary can be seen on a car's record.",
    );
    return [];
  }
  const asked = named ?? characteristicFor(row.kind as Exclude<PartFeatureKind, "characteristic">, about);
  const read = parseValue(asked, value);
  if (!read.ok) {
    of.problems.add(`${place}.value`, read.problem.message);
    return [];
  }
  const feature: PartFeature = {
    kind: named ? "characteristic" : row.kind,
    label: named?.label ?? about,
    tells,
    value: read.value,
    ...(named ? { characteristic: named.key } : {}),
  };
  return [feature];
}

/**
 * Reads what matters about a part. A name of the dictionary is that characteristic, in its notation; anything else is a
 * spot on the part, with a thread, length or text there. Empty rows are none; problems are told at `features.0.value`.
 */
export function readPartFeatures(
  rows: readonly FeatureRow[],
  of: { readonly book: CharacteristicBook; readonly problems: Problems },
): readonly PartFeature[] {
  const seen = new Set<string>();
  return rows.flatMap((row, index) => {
    const place = `features.${index}`;
    const features = readFeature(row, place, of);
    return features.filter((feature) => {
      const spot = spotOf(feature);
      if (!seen.has(spot)) return seen.add(spot);
      of.problems.add(`${place}.about`, `"${row.about}" stands here twice: keep one of them.`);
      return false;
    });
  });
}

/** One row of a part's form: a series, as typed; no standing where nothing is said of it. */
export interface FitRow {
  readonly series: string;
  readonly standing: PartFitStanding | "";
  readonly serialFrom: string;
  readonly serialTo: string;
  readonly note: string;
}

export interface FitSeries {
  readonly slug: string;
  readonly name: string;
  readonly pattern: NumberPattern;
}

function readSerial(text: string, { pattern, name }: FitSeries): number | string | undefined {
  if (text === "") return undefined;
  const serial = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (serial >= pattern.first && serial <= pattern.last) return serial;
  return `"${text}" is no serial of ${name}, which go from ${pattern.first} to ${pattern.last}.`;
}

/** Reads which series a part fits; problems are told at `fits.0.serialFrom`. Spans of one series must not overlap. */
export function readPartFits(
  rows: readonly FitRow[],
  of: { readonly series: readonly FitSeries[]; readonly problems: Problems },
): readonly PartFit[] {
  const spans: { series: string; from: number; to: number }[] = [];
  return rows.flatMap(({ standing, series: slug, note, ...serials }, index) => {
    const place = `fits.${index}`;
    if (standing === "") return [];
    const series = of.series.find((one) => one.slug === slug);
    if (!series) {
      of.problems.add(`${place}.series`, "Choose one of the club's series.");
      return [];
    }
    const [from, to] = [readSerial(serials.serialFrom, series), readSerial(serials.serialTo, series)];
    if (typeof from === "string") of.problems.add(`${place}.serialFrom`, from);
    if (typeof to === "string") of.problems.add(`${place}.serialTo`, to);
    if (typeof from === "string" || typeof to === "string") return [];
    const span = { series: slug, from: from ?? series.pattern.first, to: to ?? series.pattern.last };
    if (span.from > span.to) of.problems.add(`${place}.serialTo`, "The last serial lies before the first.");
    if (spans.some((one) => one.series === slug && one.from <= span.to && span.from <= one.to))
      of.problems.add(`${place}.standing`, `Something is said of these cars of ${series.name} already.`);
    spans.push(span);
    const fit: PartFit = {
      series: slug,
      standing,
      ...(from === undefined ? {} : { serialFrom: from }),
      ...(to === undefined ? {} : { serialTo: to }),
      ...(note === "" ? {} : { note }),
    };
    return [fit];
  });
}
