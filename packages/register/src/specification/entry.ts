import type { CharacteristicBook } from "../characteristic/book";
import type { Side } from "../characteristic/characteristic";
import { stateKey } from "../state/key";
import type { CarBasis } from "../state/state";
import { sameValue } from "../value/same";
import type { Value } from "../value/value";
import { outweighs } from "./overlap";
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

/**
 * Whether an entry's applicability holds for a car. Serials and days are inclusive; a car whose possible days of
 * build lie only partly inside is `unknown`, as is one without serial or date where the entry asks for it. Options a
 * car is not recorded with it does not have.
 */
export function applies(applicability: Applicability, basis: CarBasis): Applies {
  const { option } = applicability;
  const byOption = option === undefined || basis.options.includes(option) ? "yes" : "no";
  return worst([bySerial(applicability, basis), byDate(applicability, basis), byOption]);
}

/** What the specification says of one car; `undecided` where the record does not tell which entry applies. */
export interface CarEntry extends SpecificationEntry {
  readonly undecided?: true;
}

/** The specification's entries for one car, by characteristic and side (`stateKey`). */
export type CarEntries = ReadonlyMap<string, CarEntry>;

/** An entry as it was written, and as it stands for one side. */
interface SidedEntry {
  readonly entry: SpecificationEntry;
  readonly sided: CarEntry;
}

interface Candidate extends SidedEntry {
  readonly applies: Exclude<Applies, "no">;
}

const sameOrNone = (one: Value | undefined, other: Value | undefined) =>
  one === undefined || other === undefined ? one === other : sameValue(one, other) && sameValue(other, one);

/** Whether two entries ask the same of a car, whoever they speak of. */
function sameDemand(one: SpecificationEntry, other: SpecificationEntry): boolean {
  return (
    sameOrNone(one.nominal, other.nominal) &&
    one.limits?.lower === other.limits?.lower &&
    one.limits?.upper === other.limits?.upper &&
    one.alternatives.length === other.alternatives.length &&
    one.alternatives.every(({ role, value }) =>
      other.alternatives.some((twin) => twin.role === role && sameValue(twin.value, value)),
    )
  );
}

/** An entry of which it is not known whether it holds says neither nominal nor limits. */
function undecided({ nominal: _nominal, limits: _limits, ...entry }: CarEntry): CarEntry {
  return { ...entry, alternatives: [], undecided: true };
}

/**
 * The entry that stands among those that apply or may apply: one that certainly applies, and that every other either
 * falls behind or agrees with. Where there is none the car is undecided, under the first of the likeliest.
 */
function standing(candidates: readonly Candidate[]): CarEntry | undefined {
  const certain = candidates.filter(({ applies: held }) => held === "yes");
  const agreed = certain.filter(({ entry }) =>
    candidates.every(
      ({ entry: other }) => other === entry || outweighs(entry, other) || sameDemand(entry, other),
    ),
  );
  const stands = agreed.find(({ entry }) => !agreed.some((other) => outweighs(other.entry, entry)));
  if (stands !== undefined) return stands.sided;
  const [first] = certain.length > 0 ? certain : candidates;
  return first === undefined ? undefined : undecided(first.sided);
}

function sidesOf({ side }: SpecificationEntry, sided: boolean): readonly Side[] {
  return side === "whole" && sided ? ["left", "right"] : [side];
}

type ByPlace = ReadonlyMap<string, readonly SidedEntry[]>;
const byPlaces = new WeakMap<
  Specification,
  { readonly book: CharacteristicBook; readonly places: ByPlace }
>();

/** A specification's entries by characteristic and side: worked out once, and asked for with every car of the series. */
function byPlace(specification: Specification, book: CharacteristicBook): ByPlace {
  const known = byPlaces.get(specification);
  if (known?.book === book) return known.places;
  const places = new Map<string, SidedEntry[]>();
  for (const entry of specification.entries) {
    for (const side of sidesOf(entry, book.find(entry.characteristic)?.sided ?? false)) {
      const key = stateKey(entry.characteristic, side);
      const list = places.get(key) ?? [];
      list.push({ entry, sided: side === entry.side ? entry : { ...entry, side } });
      places.set(key, list);
    }
  }
  byPlaces.set(specification, { book, places });
  return places;
}

function chosen(sided: readonly SidedEntry[], basis: CarBasis): CarEntry | undefined {
  const [first, ...more] = sided;
  // By far the most: one entry, for every car alike.
  if (first && more.length === 0 && applies(first.entry.applicability, basis) === "yes") return first.sided;
  const candidates = sided.flatMap(({ entry, sided: own }): Candidate[] => {
    const held = applies(entry.applicability, basis);
    return held === "no" ? [] : [{ entry, sided: own, applies: held }];
  });
  return standing(candidates);
}

/**
 * Picks what the specification says of one car, by characteristic and side; an entry for `whole` of a sided
 * characteristic speaks of both sides. Of several that apply the most specific wins (`outweighs`). Where the record
 * does not tell which applies, and they ask for different things, the entry stands as undecided: it carries neither
 * nominal nor limits, since what holds for that car is not known.
 */
export function entriesFor(
  specification: Specification | undefined,
  basis: CarBasis,
  book: CharacteristicBook,
): CarEntries {
  return entriesWhere({ specification, basis, book }, () => true);
}

/** What a specification's entries are picked for. */
export interface EntriesInput {
  readonly specification: Specification | undefined;
  readonly basis: CarBasis;
  readonly book: CharacteristicBook;
}

/**
 * The same for some characteristics alone. Of a characteristic nothing else decides than its own entries, so those picked
 * are the ones {@link entriesFor} picks.
 *
 * @param wanted whether a characteristic, by its key, is one of them
 */
export function entriesWhere(
  { specification, basis, book }: EntriesInput,
  wanted: (characteristic: string) => boolean,
): CarEntries {
  const entries = new Map<string, CarEntry>();
  if (specification === undefined) return entries;
  for (const [key, sided] of byPlace(specification, book)) {
    const [first] = sided;
    const entry = first && wanted(first.entry.characteristic) ? chosen(sided, basis) : undefined;
    if (entry !== undefined) entries.set(key, entry);
  }
  return entries;
}
