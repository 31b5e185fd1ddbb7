import { contentOf } from "../value/same";
import type { Value } from "../value/value";
import { inRoleOrder } from "./entry-text";
import type { Applicability, Source, SpecificationEntry } from "./specification";

/** One entry that two specifications do not have alike. */
export type EntryChange =
  | { readonly kind: "added"; readonly after: SpecificationEntry }
  | { readonly kind: "removed"; readonly before: SpecificationEntry }
  | { readonly kind: "changed"; readonly before: SpecificationEntry; readonly after: SpecificationEntry };

type Entries = readonly SpecificationEntry[];

/** An SI number but for its last bits, which conversions change. */
const figure = (si: number | undefined) => (si === undefined ? null : Number(si.toPrecision(12)));

/** A choice is what it is whatever it was called; of anything else the entry to the letter counts too. */
function valueKey(value: Value | undefined): unknown {
  if (value === undefined) return null;
  if (value.kind === "choice") return [value.kind, value.code];
  const content = value.kind === "quantity" ? [figure(value.si), figure(value.resolution)] : contentOf(value);
  return [value.kind, value.entered, content];
}

const sourceKey = ({ title, locus, trust }: Source) => [title, locus ?? null, trust];

const placeKey = ({ serialFrom, serialTo, builtFrom, builtTo, option }: Applicability) =>
  [serialFrom, serialTo, builtFrom, builtTo, option].map((part) => part ?? null);

/** What an entry asks for, whoever it speaks of. */
function demandKey({ nominal, limits, alternatives, source, note }: SpecificationEntry): string {
  return JSON.stringify([
    valueKey(nominal),
    figure(limits?.lower),
    figure(limits?.upper),
    inRoleOrder(alternatives).map((one) => [
      one.role,
      valueKey(one.value),
      one.note ?? null,
      sourceKey(one.source),
    ]),
    sourceKey(source),
    note ?? null,
  ]);
}

/** What of which cars an entry speaks of: characteristic, side and applicability. Two of one specification should differ. */
export function entryPlace({ characteristic, side, applicability }: SpecificationEntry): string {
  return JSON.stringify([characteristic, side, placeKey(applicability)]);
}

const wholeKey = (entry: SpecificationEntry) => `${entryPlace(entry)} ${demandKey(entry)}`;

/** Whether two entries say the same of the same cars: every part but their ids. */
export function sameEntry(one: SpecificationEntry, other: SpecificationEntry): boolean {
  return wholeKey(one) === wholeKey(other);
}

interface Unpaired {
  readonly before: Entries;
  readonly after: Entries;
}

type Pair = readonly [before: SpecificationEntry, after: SpecificationEntry];

/** Pairs entries of one key, first with first; answers what found no partner. */
function pairBy(
  { before, after }: Unpaired,
  keyOf: (entry: SpecificationEntry) => string,
): { readonly pairs: readonly Pair[]; readonly rest: Unpaired } {
  const waiting = new Map<string, SpecificationEntry[]>();
  for (const entry of before) {
    const list = waiting.get(keyOf(entry)) ?? [];
    list.push(entry);
    waiting.set(keyOf(entry), list);
  }
  const pairs: Pair[] = [];
  const alone = after.filter((entry) => {
    const partner = waiting.get(keyOf(entry))?.shift();
    if (partner !== undefined) pairs.push([partner, entry]);
    return partner === undefined;
  });
  const left = new Set([...waiting.values()].flat());
  return { pairs, rest: { before: before.filter((entry) => left.has(entry)), after: alone } };
}

/** Entries whose key no other of their list has: only then is it plain which became which. */
function onlyOnes(entries: Entries, keyOf: (entry: SpecificationEntry) => string): Entries {
  const counts = new Map<string, number>();
  for (const entry of entries) counts.set(keyOf(entry), (counts.get(keyOf(entry)) ?? 0) + 1);
  return entries.filter((entry) => counts.get(keyOf(entry)) === 1);
}

/** Pairs by a key that each list has once; the others stay unpaired. */
function pairOnly(unpaired: Unpaired, keyOf: (entry: SpecificationEntry) => string) {
  const candidates = { before: onlyOnes(unpaired.before, keyOf), after: onlyOnes(unpaired.after, keyOf) };
  const { pairs } = pairBy(candidates, keyOf);
  const paired = new Set(pairs.flat());
  const rest = {
    before: unpaired.before.filter((entry) => !paired.has(entry)),
    after: unpaired.after.filter((entry) => !paired.has(entry)),
  };
  return { pairs, rest };
}

/**
 * What turns one specification into another, entry by entry, ids aside; empty for two that say the same. Entries that
 * hold for the same cars belong together; of the rest, those that ask for the same (their span moved), then those that
 * are the only one of their characteristic and side on both hands. What is left was added or removed.
 */
export function specificationDifference(before: Entries, after: Entries): readonly EntryChange[] {
  const { rest: unlike } = pairBy({ before, after }, wholeKey);
  const held = pairBy(unlike, entryPlace);
  const moved = pairOnly(held.rest, (entry) => `${entry.characteristic} ${demandKey(entry)}`);
  const only = pairOnly(moved.rest, ({ characteristic, side }) => `${characteristic} ${side}`);
  const changed = [...held.pairs, ...moved.pairs, ...only.pairs];
  return [
    ...only.rest.before.map((entry) => ({ kind: "removed" as const, before: entry })),
    ...changed.map(([was, is]) => ({ kind: "changed" as const, before: was, after: is })),
    ...only.rest.after.map((entry) => ({ kind: "added" as const, after: entry })),
  ];
}

/**
 * Applies a difference: what is removed or changed goes, what it became and what is added comes, at the end.
 * @throws RangeError when the specification does not have an entry the difference speaks of
 */
export function applyDifference(entries: Entries, changes: readonly EntryChange[]): Entries {
  const left = [...entries];
  for (const change of changes) {
    if (change.kind === "added") continue;
    const at = left.findIndex((entry) => sameEntry(entry, change.before));
    if (at < 0) throw new RangeError(`there is no entry ${change.before.id} to ${change.kind}`);
    left.splice(at, 1);
  }
  return [...left, ...changes.flatMap((change) => (change.kind === "removed" ? [] : [change.after]))];
}

/** Characteristics a difference speaks of. */
export function changedCharacteristics(changes: readonly EntryChange[]): ReadonlySet<string> {
  return new Set(
    changes.flatMap((change) => {
      if (change.kind === "added") return [change.after.characteristic];
      if (change.kind === "removed") return [change.before.characteristic];
      return [change.before.characteristic, change.after.characteristic];
    }),
  );
}
