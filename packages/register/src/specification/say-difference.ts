import type { Assembly } from "../characteristic/characteristic";
import { contentOf } from "../value/same";
import type { EntryChange } from "./difference";
import { entryText, inRoleOrder } from "./entry-text";
import { alternativeRoleWords, type EntryWords, entryLine, sayEntryValue } from "./say-entry";
import { type Alternative, noSourceTitle, type Source, type SpecificationEntry } from "./specification";

/** One part of an entry in which two specifications differ; empty where one of them says nothing. */
export interface ChangedField {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

/** One difference, ready to be read. */
export interface EntryChangeLine {
  readonly kind: EntryChange["kind"];
  readonly characteristic: string;
  readonly label: string;
  readonly assembly: Assembly;
  readonly side?: "left" | "right";
  /** Cars it holds for now, or held for if it was removed; empty for every car. */
  readonly cars: string;
  /** Never empty: every part that differs. */
  readonly fields: readonly ChangedField[];
}

function saySource({ title, locus, trust }: Source): string {
  if (title === noSourceTitle) return `none (${trust})`;
  return `${locus === undefined ? title : `${title}, ${locus}`} (${trust})`;
}

type Parts = ReadonlyMap<string, string>;

function alternativeName(
  { role, value }: Alternative,
  entry: SpecificationEntry,
  { book }: EntryWords,
): string {
  const name = alternativeRoleWords[role];
  const text = sayEntryValue(book.find(entry.characteristic), value);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${text}`;
}

/** What an entry says, part by part, in the order an entry is read in. */
function partsOf(entry: SpecificationEntry | undefined, words: EntryWords): Parts {
  if (entry === undefined) return new Map();
  const text = entryText(entry, words.book);
  const { nominal, side, cars, note } = entryLine(entry, words);
  const plain: readonly (readonly [string, string])[] = [
    ["Side", side ?? (words.book.find(entry.characteristic)?.sided === true ? "both" : "")],
    ["Nominal", nominal],
    ["Lower limit", text.lower],
    ["Upper limit", text.upper],
    ...inRoleOrder(entry.alternatives).map(
      (one) =>
        [
          alternativeName(one, entry, words),
          [one.note, saySource(one.source)].filter((part) => part !== undefined).join("; "),
        ] as const,
    ),
    ["Holds for", cars === "" ? "every car" : cars],
    ["Source", saySource(entry.source)],
    ["Note", note],
  ];
  const parts = new Map<string, string>();
  for (const [label, part] of plain) {
    if (part === "") continue;
    // Only an entry that contradicts itself names an alternative twice; both are still told.
    parts.set(parts.has(label) ? `${label} (${parts.size})` : label, part);
  }
  return parts;
}

/** Alternatives that are the same on both hands but stand in another order: of two that fit, the first one counts. */
function reordered(
  before: SpecificationEntry,
  after: SpecificationEntry,
  words: EntryWords,
): readonly ChangedField[] {
  const names = (entry: SpecificationEntry) =>
    inRoleOrder(entry.alternatives).map((one) => `${one.role} ${contentOf(one.value)}`);
  const [was, is] = [names(before), names(after)];
  if (was.join("\n") === is.join("\n") || was.toSorted().join("\n") !== is.toSorted().join("\n")) return [];
  const say = (entry: SpecificationEntry) =>
    inRoleOrder(entry.alternatives)
      .map(({ value }) => sayEntryValue(words.book.find(entry.characteristic), value))
      .join(", ");
  return [{ label: "Order of alternatives", before: say(before), after: say(after) }];
}

function fieldsOf(
  before: SpecificationEntry | undefined,
  after: SpecificationEntry | undefined,
  words: EntryWords,
): readonly ChangedField[] {
  const [was, is] = [partsOf(before, words), partsOf(after, words)];
  const labels = [...new Set([...was.keys(), ...is.keys()])];
  const fields = labels
    .map((label) => ({ label, before: was.get(label) ?? "", after: is.get(label) ?? "" }))
    .filter((field) => field.before !== field.after);
  const order = before === undefined || after === undefined ? [] : reordered(before, after, words);
  return [...fields, ...order];
}

/** Words a difference, part by part: what it was, what it is. */
export function entryChangeLine(change: EntryChange, words: EntryWords): EntryChangeLine {
  const before = change.kind === "added" ? undefined : change.before;
  const after = change.kind === "removed" ? undefined : change.after;
  const entry = change.kind === "removed" ? change.before : change.after;
  const { characteristic, label, assembly, side, cars } = entryLine(entry, words);
  return {
    kind: change.kind,
    characteristic,
    label,
    assembly,
    ...(side === undefined ? {} : { side }),
    cars,
    fields: fieldsOf(before, after, words),
  };
}
