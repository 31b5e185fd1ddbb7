import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import { unitBeside } from "../deviation/line";
import { printValue } from "../value/print";
import type { Value } from "../value/value";
import { printLimit } from "./print-limit";
import {
  type Alternative,
  type AlternativeRole,
  alternativeRoles,
  noSourceTitle,
  type Source,
  type SpecificationEntry,
} from "./specification";

/** What is kept of an entry at most; a specification of more entries is none that anybody reads. */
export const specificationLimits = {
  entries: 5000,
  alternatives: 40,
  value: 2000,
  source: 200,
  locus: 120,
  note: 2000,
} as const;

/** Another value accepted in place of the nominal, as a form or a table has it; empty where nothing is said. */
export interface AlternativeText {
  readonly role: AlternativeRole;
  readonly value: string;
  readonly note: string;
  /** Title of its source; empty for that of the entry. */
  readonly source: string;
  /** Page within its source; with no source named, within that of the entry. */
  readonly locus: string;
  /** Empty for that of the entry. */
  readonly trust: string;
}

/** One entry of a specification as a form or a row of a table has it: every part as text, empty where nothing is said. */
export interface EntryText {
  /** Key, label or another name of the characteristic. */
  readonly characteristic: string;
  /** Empty or "both" for both sides, or for what a car has once. */
  readonly side: string;
  readonly nominal: string;
  readonly lower: string;
  readonly upper: string;
  readonly alternatives: readonly AlternativeText[];
  /** A serial, or a whole chassis number of the series. */
  readonly serialFrom: string;
  readonly serialTo: string;
  readonly builtFrom: string;
  readonly builtTo: string;
  readonly option: string;
  readonly source: string;
  readonly locus: string;
  readonly trust: string;
  readonly note: string;
}

/** An entry nothing is said in yet. */
export const blankEntry: EntryText = {
  characteristic: "",
  side: "",
  nominal: "",
  lower: "",
  upper: "",
  alternatives: [],
  serialFrom: "",
  serialTo: "",
  builtFrom: "",
  builtTo: "",
  option: "",
  source: "",
  locus: "",
  trust: "",
  note: "",
};

/** Alternatives in the order in which they stand: by role, within a role as they were given. */
export function inRoleOrder<T extends { readonly role: AlternativeRole }>(
  alternatives: readonly T[],
): readonly T[] {
  return alternativeRoles.flatMap((role) => alternatives.filter((one) => one.role === role));
}

/** As entered; a value whose entry is empty, as one made by the program may be, in the characteristic's own words. */
function valueText(characteristic: Characteristic | undefined, value: Value | undefined): string {
  if (value === undefined) return "";
  if (value.entered !== "" || characteristic === undefined) return value.entered;
  return printValue(characteristic, value, { system: "metric" });
}

function limitText(
  characteristic: Characteristic | undefined,
  si: number | undefined,
  nominal?: Value,
): string {
  if (si === undefined || characteristic?.kind !== "quantity") return si === undefined ? "" : String(si);
  return printLimit(characteristic, si, unitBeside(characteristic, nominal, "metric"));
}

type SourceText = Pick<AlternativeText, "source" | "locus" | "trust">;

/** Only what differs from the entry's own source: so that a correction of that one corrects all. */
function alternativeSource({ title, locus, trust }: Source, own: Source): SourceText {
  const told = { trust: trust === own.trust ? "" : trust };
  if (title === own.title && locus === own.locus) return { ...told, source: "", locus: "" };
  if (title === own.title && locus !== undefined) return { ...told, source: "", locus };
  return { ...told, source: title, locus: locus ?? "" };
}

function alternativeText(
  { role, value, note, source }: Alternative,
  own: Source,
  characteristic: Characteristic | undefined,
): AlternativeText {
  return {
    role,
    value: valueText(characteristic, value),
    note: note ?? "",
    ...alternativeSource(source, own),
  };
}

const serial = (number: number | undefined) => (number === undefined ? "" : String(number));

/** An entry as text that {@link readEntryText} reads back as the same: values to the letter, limits in the nominal's unit. */
export function entryText(entry: SpecificationEntry, book: CharacteristicBook): EntryText {
  const { applicability, source, limits, nominal } = entry;
  const characteristic = book.find(entry.characteristic);
  return {
    characteristic: entry.characteristic,
    side: entry.side === "whole" ? "" : entry.side,
    nominal: valueText(characteristic, nominal),
    lower: limitText(characteristic, limits?.lower, nominal),
    upper: limitText(characteristic, limits?.upper, nominal),
    alternatives: inRoleOrder(entry.alternatives).map((one) => alternativeText(one, source, characteristic)),
    serialFrom: serial(applicability.serialFrom),
    serialTo: serial(applicability.serialTo),
    builtFrom: applicability.builtFrom ?? "",
    builtTo: applicability.builtTo ?? "",
    option: applicability.option ?? "",
    source: source.title === noSourceTitle ? "" : source.title,
    locus: source.locus ?? "",
    trust: source.trust,
    note: entry.note ?? "",
  };
}
