import type { CharacteristicBook } from "../characteristic/book";
import type { Assembly, Characteristic } from "../characteristic/characteristic";
import { sayLimits } from "../deviation/line";
import { numberText } from "../identity/near-miss";
import type { NumberPattern } from "../identity/number";
import { sayDay } from "../identity/say-day";
import type { BracketModel } from "../sheet/sheet-model";
import { printValue, type UnitSystem } from "../value/print";
import type { Value } from "../value/value";
import { inRoleOrder } from "./entry-text";
import type { AlternativeRole, Applicability, Source, SpecificationEntry } from "./specification";

/** What stands in for the nominal, in words. */
export const alternativeRoleWords: Readonly<Record<AlternativeRole, string>> = {
  periodOption: "period option",
  acceptedSubstitute: "accepted substitute",
  serviceReplacement: "later service replacement",
};

/** What the wording of an entry goes by. */
export interface EntryWords {
  readonly book: CharacteristicBook;
  readonly system: UnitSystem;
  /** Writes serials as the whole numbers they are; left out, they stay serials. */
  readonly pattern?: NumberPattern;
  /** Names of the series' options by code. */
  readonly options?: Readonly<Record<string, string>>;
}

function saySpan(from: string | undefined, to: string | undefined): string {
  if (from === undefined) return to === undefined ? "" : `up to ${to}`;
  return to === undefined ? `from ${from}` : `${from} to ${to}`;
}

/** Which cars an entry speaks of, for reading: "S2-0120 to S2-0398, option H (handling pack)"; empty for every car. */
export function sayWhichCars(applicability: Applicability, { pattern, options = {} }: EntryWords): string {
  const { serialFrom, serialTo, builtFrom, builtTo, option } = applicability;
  const number = (serial: number | undefined) =>
    serial === undefined || pattern === undefined ? serial?.toString() : numberText(pattern, serial);
  const day = (iso: string | undefined) => (iso === undefined ? undefined : sayDay(iso));
  const numbers = saySpan(number(serialFrom), number(serialTo));
  const days = saySpan(day(builtFrom), day(builtTo));
  const name = option === undefined ? undefined : options[option];
  const parts = [
    numbers === "" || pattern !== undefined ? numbers : `numbers ${numbers}`,
    days === "" ? "" : `built ${days}`,
    option === undefined ? "" : `option ${option}${name === undefined ? "" : ` (${name})`}`,
  ];
  return parts.filter((part) => part !== "").join(", ");
}

/** A value as an entry shows it: to the letter, a choice by its label. */
export function sayEntryValue(characteristic: Characteristic | undefined, value: Value): string {
  if (characteristic === undefined || value.kind !== characteristic.kind) return value.entered;
  return printValue(characteristic, value, { system: value.kind === "choice" ? "metric" : "asEntered" });
}

/** One value accepted in place of the nominal, ready to be read. */
export interface AlternativeLine {
  readonly role: AlternativeRole;
  readonly roleText: string;
  readonly value: string;
  readonly note: string;
  readonly source: Source;
}

/** One entry of a specification, ready to be read. */
export interface EntryLine {
  readonly id: string;
  readonly characteristic: string;
  readonly label: string;
  readonly assembly: Assembly;
  readonly side?: "left" | "right";
  readonly setting: boolean;
  /** Empty where only limits are given. */
  readonly nominal: string;
  /** "-1° to 0°", "at least 8 mm"; empty where there are none. */
  readonly limits: string;
  /** Limits and nominal, SI, to draw; missing without limits. */
  readonly bracket?: BracketModel;
  readonly alternatives: readonly AlternativeLine[];
  /** Empty for every car of the series. */
  readonly cars: string;
  readonly source: Source;
  readonly note: string;
}

function bracketOf({ limits, nominal }: SpecificationEntry): { readonly bracket?: BracketModel } {
  if (limits === undefined) return {};
  return { bracket: { ...limits, ...(nominal?.kind === "quantity" ? { nominal: nominal.si } : {}) } };
}

function limitsText(
  { limits, nominal }: SpecificationEntry,
  characteristic: Characteristic | undefined,
  system: UnitSystem,
): string {
  if (limits === undefined || characteristic === undefined) return "";
  return sayLimits(characteristic, limits, system, nominal);
}

/** Words an entry. A characteristic that is no longer in the book is told by its key, under the chassis. */
export function entryLine(entry: SpecificationEntry, words: EntryWords): EntryLine {
  const characteristic = words.book.find(entry.characteristic);
  const { side, nominal } = entry;
  return {
    id: entry.id,
    characteristic: entry.characteristic,
    label: characteristic?.label ?? entry.characteristic,
    assembly: characteristic?.assembly ?? "chassis",
    ...(side === "whole" ? {} : { side }),
    setting: characteristic?.setting ?? false,
    nominal: nominal === undefined ? "" : sayEntryValue(characteristic, nominal),
    limits: limitsText(entry, characteristic, words.system),
    ...bracketOf(entry),
    alternatives: inRoleOrder(entry.alternatives).map(({ role, value, note, source }) => ({
      role,
      roleText: alternativeRoleWords[role],
      value: sayEntryValue(characteristic, value),
      note: note ?? "",
      source,
    })),
    cars: sayWhichCars(entry.applicability, words),
    source: entry.source,
    note: entry.note ?? "",
  };
}

/** Lines in the order of walking round the car, within a characteristic as they were given. */
export function inWalkingOrder<T extends { readonly characteristic: string }>(
  lines: readonly T[],
  book: CharacteristicBook,
): readonly T[] {
  const order = new Map(book.all.map(({ key }, index) => [key, index]));
  const place = ({ characteristic }: T) => order.get(characteristic) ?? book.all.length;
  return [...lines].sort((one, other) => place(one) - place(other));
}
