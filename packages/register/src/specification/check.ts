import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic, QuantityCharacteristic } from "../characteristic/characteristic";
import { unitBeside } from "../deviation/line";
import { sameValue } from "../value/same";
import type { Value } from "../value/value";
import { applicabilityProblem, type SeriesFacts, sayApplicability } from "./applicability";
import { outweighs, overlap } from "./overlap";
import { printLimit } from "./print-limit";
import type { Specification, SpecificationEntry } from "./specification";

/** How a specification can contradict itself or the dictionary. Closed. */
export const specificationProblemCodes = [
  "UNKNOWN_CHARACTERISTIC",
  "WRONG_SIDE",
  "WRONG_KIND",
  "UNKNOWN_CHOICE",
  "SAYS_NOTHING",
  "LIMITS_INVERTED",
  "LIMITS_NOT_FOR_KIND",
  "NOMINAL_OUTSIDE_LIMITS",
  "SUBSTITUTE_IS_NOMINAL",
  "SUBSTITUTE_TWICE",
  "NEVER_APPLIES",
  "UNKNOWN_OPTION",
  "OVERLAP",
  "ID_TWICE",
] as const;
export type SpecificationProblemCode = (typeof specificationProblemCodes)[number];

/** One contradiction, with the entries it lies in. */
export interface SpecificationProblem {
  readonly code: SpecificationProblemCode;
  /** A sentence that names the characteristic and says what is wrong. */
  readonly message: string;
  readonly characteristic: string;
  /** Ids of the entries, in the specification's order. */
  readonly entries: readonly string[];
  /** Part of the entry it lies in, as `EntryText` names it; missing where it lies between entries. */
  readonly field?: string;
}

interface Entry {
  readonly entry: SpecificationEntry;
  readonly characteristic: Characteristic;
}

interface Found {
  readonly code: SpecificationProblemCode;
  /** What is wrong, to follow the characteristic's label. */
  readonly what: string;
  readonly field?: string;
}

function problem({ entry, characteristic }: Entry, { code, what, field }: Found): SpecificationProblem {
  const message = `${characteristic.label}: ${what}`;
  const told = { code, message, characteristic: entry.characteristic, entries: [entry.id] };
  return field === undefined ? told : { ...told, field };
}

/** Where a value stands in its entry, for the words and for the form. */
interface Place {
  readonly role: "nominal" | "alternative";
  readonly field: string;
}

function valueProblem(at: Entry, value: Value, { role, field }: Place): SpecificationProblem | undefined {
  const { characteristic } = at;
  const told = `the ${role} "${value.entered}"`;
  if (value.kind === "absent") {
    if (characteristic.removable) return undefined;
    return problem(at, { code: "WRONG_KIND", what: `${told} says not fitted, but every car has one`, field });
  }
  if (value.kind !== characteristic.kind) {
    const what = `${told} is a ${value.kind}, not a ${characteristic.kind}`;
    return problem(at, { code: "WRONG_KIND", what, field });
  }
  if (value.kind !== "choice" || characteristic.kind !== "choice") return undefined;
  if (characteristic.choices.some(({ code }) => code === value.code)) return undefined;
  return problem(at, {
    code: "UNKNOWN_CHOICE",
    what: `the ${role} "${value.code}" is none of its choices`,
    field,
  });
}

function sayInverted(characteristic: QuantityCharacteristic, { entry }: Entry): string {
  const { limits, nominal } = entry;
  const unit = unitBeside(characteristic, nominal, "metric");
  const [lower, upper] = [limits?.lower, limits?.upper].map((si = 0) => printLimit(characteristic, si, unit));
  return `the lower limit ${lower} lies above the upper one ${upper}`;
}

function limitProblem(at: Entry): Found | undefined {
  const { limits, nominal } = at.entry;
  if (limits === undefined) return undefined;
  const { lower, upper } = limits;
  const { characteristic } = at;
  if (characteristic.kind !== "quantity") {
    return { code: "LIMITS_NOT_FOR_KIND", what: `a ${characteristic.kind} has no limits`, field: "lower" };
  }
  if (lower === undefined && upper === undefined) {
    return { code: "SAYS_NOTHING", what: "limits without a lower or an upper one", field: "lower" };
  }
  if (![lower ?? 0, upper ?? 0].every(Number.isFinite)) {
    const what = `limits must be finite, not ${lower} and ${upper}`;
    return { code: "LIMITS_INVERTED", what, field: "lower" };
  }
  if (lower !== undefined && upper !== undefined && lower > upper) {
    return { code: "LIMITS_INVERTED", what: sayInverted(characteristic, at), field: "lower" };
  }
  if (nominal?.kind !== "quantity") return undefined;
  const { si, entered } = nominal;
  const room = 1e-9 * Math.abs(si);
  const outside = (lower !== undefined && si < lower - room) || (upper !== undefined && si > upper + room);
  const what = `the nominal "${entered}" lies outside its limits`;
  return outside ? { code: "NOMINAL_OUTSIDE_LIMITS", what, field: "nominal" } : undefined;
}

function alternativeProblems(at: Entry): readonly (SpecificationProblem | undefined)[] {
  const { nominal, alternatives } = at.entry;
  return alternatives.flatMap(({ value }, index) => {
    const field = `alternatives.${index}.value`;
    const told = `the alternative "${value.entered}"`;
    const twin = alternatives.slice(0, index).find((earlier) => sameValue(earlier.value, value));
    return [
      valueProblem(at, value, { role: "alternative", field }),
      nominal && sameValue(nominal, value)
        ? problem(at, { code: "SUBSTITUTE_IS_NOMINAL", what: `${told} is the nominal itself`, field })
        : undefined,
      twin && problem(at, { code: "SUBSTITUTE_TWICE", what: `${told} is given twice`, field }),
    ];
  });
}

function entryProblems(at: Entry, series: SeriesFacts | undefined): readonly SpecificationProblem[] {
  const { entry, characteristic } = at;
  const { nominal, limits, applicability, side } = entry;
  const plain: readonly (Found | undefined)[] = [
    !characteristic.sided && side !== "whole"
      ? { code: "WRONG_SIDE", what: `it has no ${side} side; a car has it once`, field: "side" }
      : undefined,
    nominal === undefined && limits === undefined
      ? { code: "SAYS_NOTHING", what: "neither a nominal nor limits are given", field: "nominal" }
      : undefined,
    limitProblem(at),
    applicabilityProblem(applicability, series),
  ];
  const found = [
    ...plain.map((one) => (one === undefined ? undefined : problem(at, one))),
    nominal && valueProblem(at, nominal, { role: "nominal", field: "nominal" }),
    ...alternativeProblems(at),
  ];
  return found.filter((one) => one !== undefined);
}

function overlaps(group: readonly Entry[]): readonly SpecificationProblem[] {
  return group.flatMap((at, index) =>
    group.slice(0, index).flatMap((earlier): SpecificationProblem[] => {
      const [one, other] = [earlier.entry, at.entry];
      if (!overlap(one, other) || outweighs(one, other) || outweighs(other, one)) return [];
      const [these, those] = [one, other].map(({ applicability }) => sayApplicability(applicability));
      const what =
        these === those
          ? `it is specified twice for ${these}`
          : `it is specified twice, for ${these} and for ${those}, and neither is the narrower`;
      return [{ ...problem(at, { code: "OVERLAP", what }), entries: [one.id, other.id] }];
    }),
  );
}

function idsTwice(entries: readonly SpecificationEntry[]): readonly SpecificationProblem[] {
  const seen = new Set<string>();
  return entries.flatMap(({ id, characteristic }) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [
      { code: "ID_TWICE" as const, message: `two entries have the id ${id}`, characteristic, entries: [id] },
    ];
  });
}

function unknown({ id, characteristic }: SpecificationEntry): SpecificationProblem {
  const message = `there is no characteristic "${characteristic}" in the dictionary`;
  return { code: "UNKNOWN_CHARACTERISTIC", message, characteristic, entries: [id], field: "characteristic" };
}

/**
 * Everything in which a specification contradicts itself, the dictionary or the series it is for; empty when it can be
 * used. Overlapping entries are compared within a characteristic only, so that a long specification stays quick.
 *
 * @param series left out where the series does not matter: options and spans are then taken as they are
 */
export function checkSpecification(
  { entries }: Pick<Specification, "entries">,
  book: CharacteristicBook,
  series?: SeriesFacts,
): readonly SpecificationProblem[] {
  const groups = new Map<string, Entry[]>();
  const unknowns: SpecificationProblem[] = [];
  for (const entry of entries) {
    const characteristic = book.find(entry.characteristic);
    if (characteristic === undefined) unknowns.push(unknown(entry));
    else {
      const group = groups.get(entry.characteristic) ?? [];
      group.push({ entry, characteristic });
      groups.set(entry.characteristic, group);
    }
  }
  const known = [...groups.values()].flatMap((group) => [
    ...group.flatMap((at) => entryProblems(at, series)),
    ...overlaps(group),
  ]);
  return [...idsTwice(entries), ...unknowns, ...known];
}
