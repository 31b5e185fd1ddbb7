import type { SheetModel } from "@trunnion/register";
import { raised } from "./check-row";

/** The sources of a sheet's checks, numbered in the order they come up; common practice needs no number. */
export interface Footnotes {
  readonly of: (source: string) => number | undefined;
  /** One a publication, with its places. */
  readonly lines: readonly string[];
}

const unnumbered = new Set(["", "common practice", "The record of this car"]);

interface Numbered {
  readonly number: number;
  readonly parts: readonly string[];
}

const known = new WeakMap<SheetModel["stations"], Footnotes>();

/** Asked by several sections of one sheet, so worked out once for it. */
export function footnotesOf({ stations }: Pick<SheetModel, "stations">): Footnotes {
  const made = known.get(stations) ?? numberedIn(stations);
  known.set(stations, made);
  return made;
}

function numberedIn(stations: SheetModel["stations"]): Footnotes {
  const numbers = new Map<string, number>();
  for (const { source } of stations.flatMap(({ checks }) => checks)) {
    if (!unnumbered.has(source) && !numbers.has(source)) numbers.set(source, numbers.size + 1);
  }
  const publications = new Map<string, Numbered[]>();
  for (const [source, number] of numbers) {
    const parts = source.split(", ");
    const [title = ""] = parts;
    publications.set(title, [...(publications.get(title) ?? []), { number, parts }]);
  }
  return { of: (source) => numbers.get(source), lines: [...publications.values()].map(line) };
}

/** "National rules, 2025: ³ chapter 7; ⁴ chapter 8": what the places share is said once. */
function line(places: readonly Numbered[]): string {
  const [first] = places;
  if (first === undefined) return "";
  if (places.length === 1) return `${raised(first.number)} ${first.parts.join(", ")}`;
  const apart = first.parts.findIndex((part, at) => places.some(({ parts }) => parts[at] !== part));
  const shared = apart < 0 ? first.parts.length : apart;
  const each = places.map(
    ({ number, parts }) => `${raised(number)} ${parts.slice(shared).join(", ") || "as a whole"}`,
  );
  return `${first.parts.slice(0, shared).join(", ")}: ${each.join("; ")}`;
}
