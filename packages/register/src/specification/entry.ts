import type { CharacteristicBook } from "../characteristic/book";
import type { Side } from "../characteristic/characteristic";
import { stateKey } from "../state/key";
import type { CarBasis } from "../state/state";
import type { Applicability, Specification, SpecificationEntry } from "./specification";

/** Whether an entry speaks of a car: `unknown` when the record does not say enough to tell. */
export type Applies = "yes" | "no" | "unknown";

function worst(parts: readonly Applies[]): Applies {
  if (parts.includes("no")) return "no";
  return parts.includes("unknown") ? "unknown" : "yes";
}

function bySerial({ serialFrom, serialTo }: Applicability, { serial }: CarBasis): Applies {
  if (serialFrom === undefined && serialTo === undefined) return "yes";
  if (serial === undefined) return "unknown";
  return serial >= (serialFrom ?? serial) && serial <= (serialTo ?? serial) ? "yes" : "no";
}

function byDate({ builtFrom, builtTo }: Applicability, { built }: CarBasis): Applies {
  if (builtFrom === undefined && builtTo === undefined) return "yes";
  if (!built) return "unknown";
  const from = builtFrom ?? built.earliest;
  const to = builtTo ?? built.latest;
  if (built.earliest >= from && built.latest <= to) return "yes";
  return built.latest < from || built.earliest > to ? "no" : "unknown";
}

/** Whether an entry's applicability holds for a car. */
export function applies(applicability: Applicability, basis: CarBasis): Applies {
  const { option } = applicability;
  const byOption = option === undefined || basis.options.includes(option) ? "yes" : "no";
  return worst([bySerial(applicability, basis), byDate(applicability, basis), byOption]);
}

/** How narrow an entry is: an option outweighs a span, and a span the whole series; a side outweighs both sides. */
export function narrowness({ applicability, side }: SpecificationEntry): number {
  const { serialFrom, serialTo, builtFrom, builtTo, option } = applicability;
  const span = [serialFrom, serialTo, builtFrom, builtTo].some((end) => end !== undefined);
  return (option === undefined ? 0 : 4) + (span ? 2 : 0) + (side === "whole" ? 0 : 1);
}

function sidesOf(entry: SpecificationEntry, book: CharacteristicBook): readonly Side[] {
  const sided = book.find(entry.characteristic)?.sided ?? false;
  return entry.side === "whole" && sided ? ["left", "right"] : [entry.side];
}

/** What the specification says of one car; `undecided` where the record does not tell whether a narrower entry applies. */
export interface CarEntry extends SpecificationEntry {
  readonly undecided?: true;
}

/** The specification's entries for one car, by characteristic and side; of several that apply the narrowest. */
export type CarEntries = ReadonlyMap<string, CarEntry>;

/** An entry of which it is not known whether it holds says neither nominal nor limits. */
function undecided({ nominal: _nominal, limits: _limits, ...entry }: SpecificationEntry): CarEntry {
  return { ...entry, alternatives: [], undecided: true };
}

/**
 * Picks what the specification says of one car. Where the record does not tell whether a narrower entry applies,
 * what holds is not known: the entry stands as undecided, since unknown is never a pass.
 */
export function entriesFor(
  specification: Specification | undefined,
  basis: CarBasis,
  book: CharacteristicBook,
): CarEntries {
  const chosen = new Map<string, { readonly entry: SpecificationEntry; readonly applies: Applies }>();
  const byWidth = [...(specification?.entries ?? [])].sort((a, b) => narrowness(a) - narrowness(b));
  for (const entry of byWidth) {
    const held = applies(entry.applicability, basis);
    if (held === "no") continue;
    for (const side of sidesOf(entry, book)) {
      chosen.set(stateKey(entry.characteristic, side), { entry: { ...entry, side }, applies: held });
    }
  }
  return new Map(
    [...chosen].map(([key, { entry, applies: held }]) => [key, held === "yes" ? entry : undecided(entry)]),
  );
}
