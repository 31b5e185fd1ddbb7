import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import { sameValue } from "../value/same";
import type { Value } from "../value/value";
import { outweighs, overlap } from "./overlap";
import type { Applicability, Specification, SpecificationEntry } from "./specification";

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
}

interface Entry {
  readonly entry: SpecificationEntry;
  readonly characteristic: Characteristic;
}

function problem(
  { entry, characteristic }: Entry,
  code: SpecificationProblemCode,
  what: string,
): SpecificationProblem {
  const message = `${characteristic.label}: ${what}`;
  return { code, message, characteristic: entry.characteristic, entries: [entry.id] };
}

function valueProblem(at: Entry, value: Value, role: string): SpecificationProblem | undefined {
  const { characteristic } = at;
  if (value.kind === "absent") {
    if (characteristic.removable) return undefined;
    return problem(at, "WRONG_KIND", `the ${role} "${value.entered}" says not fitted, but every car has one`);
  }
  if (value.kind !== characteristic.kind) {
    return problem(
      at,
      "WRONG_KIND",
      `the ${role} "${value.entered}" is a ${value.kind}, not a ${characteristic.kind}`,
    );
  }
  if (value.kind !== "choice" || characteristic.kind !== "choice") return undefined;
  if (characteristic.choices.some(({ code }) => code === value.code)) return undefined;
  return problem(at, "UNKNOWN_CHOICE", `the ${role} "${value.code}" is none of its choices`);
}

function limitProblems(at: Entry): readonly (SpecificationProblem | undefined)[] {
  const { limits, nominal } = at.entry;
  if (limits === undefined) return [];
  const { lower, upper } = limits;
  if (at.characteristic.kind !== "quantity") {
    return [problem(at, "LIMITS_NOT_FOR_KIND", `a ${at.characteristic.kind} has no limits`)];
  }
  if (lower === undefined && upper === undefined) {
    return [problem(at, "SAYS_NOTHING", "limits without a lower or an upper one")];
  }
  if (![lower ?? 0, upper ?? 0].every(Number.isFinite)) {
    return [problem(at, "LIMITS_INVERTED", `limits must be finite, not ${lower} and ${upper}`)];
  }
  if (lower !== undefined && upper !== undefined && lower > upper) {
    return [
      problem(at, "LIMITS_INVERTED", `the lower limit ${lower} lies above the upper one ${upper} (SI)`),
    ];
  }
  if (nominal?.kind !== "quantity") return [];
  const { si, entered } = nominal;
  const room = 1e-9 * Math.abs(si);
  const outside = (lower !== undefined && si < lower - room) || (upper !== undefined && si > upper + room);
  return outside
    ? [problem(at, "NOMINAL_OUTSIDE_LIMITS", `the nominal "${entered}" lies outside its limits`)]
    : [];
}

function alternativeProblems(at: Entry): readonly (SpecificationProblem | undefined)[] {
  const { nominal, alternatives } = at.entry;
  return alternatives.flatMap(({ value }, index) => {
    const twin = alternatives.slice(0, index).find((earlier) => sameValue(earlier.value, value));
    return [
      valueProblem(at, value, "alternative"),
      nominal && sameValue(nominal, value)
        ? problem(at, "SUBSTITUTE_IS_NOMINAL", `the alternative "${value.entered}" is the nominal itself`)
        : undefined,
      twin && problem(at, "SUBSTITUTE_TWICE", `the alternative "${value.entered}" is given twice`),
    ];
  });
}

function never({ serialFrom, serialTo, builtFrom, builtTo }: Applicability): string | undefined {
  if (serialFrom !== undefined && serialTo !== undefined && serialFrom > serialTo) {
    return `from number ${serialFrom} to ${serialTo} there is none`;
  }
  if (builtFrom !== undefined && builtTo !== undefined && builtFrom > builtTo) {
    return `from ${builtFrom} to ${builtTo} there is no day`;
  }
  return undefined;
}

function entryProblems(at: Entry): readonly SpecificationProblem[] {
  const { entry, characteristic } = at;
  const empty = never(entry.applicability);
  const found = [
    !characteristic.sided && entry.side !== "whole"
      ? problem(at, "WRONG_SIDE", `it has no ${entry.side} side; a car has it once`)
      : undefined,
    entry.nominal === undefined && entry.limits === undefined
      ? problem(at, "SAYS_NOTHING", "neither a nominal nor limits are given")
      : undefined,
    entry.nominal && valueProblem(at, entry.nominal, "nominal"),
    ...limitProblems(at),
    ...alternativeProblems(at),
    empty === undefined ? undefined : problem(at, "NEVER_APPLIES", empty),
  ];
  return found.filter((one) => one !== undefined);
}

/** Which cars an entry speaks of, in words: "numbers 120 to 398, option SPORT", "every car". */
export function sayApplicability(applicability: Applicability): string {
  const { serialFrom, serialTo, builtFrom, builtTo, option } = applicability;
  const span = (from: number | string | undefined, to: number | string | undefined) =>
    from === undefined ? `up to ${to}` : to === undefined ? `from ${from}` : `${from} to ${to}`;
  const parts = [
    serialFrom === undefined && serialTo === undefined ? undefined : `numbers ${span(serialFrom, serialTo)}`,
    builtFrom === undefined && builtTo === undefined ? undefined : `built ${span(builtFrom, builtTo)}`,
    option === undefined ? undefined : `option ${option}`,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? "every car" : parts.join(", ");
}

function overlaps(group: readonly Entry[]): readonly SpecificationProblem[] {
  return group.flatMap((at, index) =>
    group.slice(0, index).flatMap((earlier): SpecificationProblem[] => {
      const [one, other] = [earlier.entry, at.entry];
      if (!overlap(one, other) || outweighs(one, other) || outweighs(other, one)) return [];
      const cars = [one, other].map(({ applicability }) => sayApplicability(applicability)).join(" and for ");
      const what = `it is specified twice, for ${cars}, and neither is the narrower`;
      return [{ ...problem(at, "OVERLAP", what), entries: [one.id, other.id] }];
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
  return { code: "UNKNOWN_CHARACTERISTIC", message, characteristic, entries: [id] };
}

/**
 * Everything in which a specification contradicts itself or the dictionary; empty when it can be used. Overlapping
 * entries are compared within a characteristic only, so that a long specification stays quick.
 */
export function checkSpecification(
  { entries }: Pick<Specification, "entries">,
  book: CharacteristicBook,
): readonly SpecificationProblem[] {
  const groups = new Map<string, Entry[]>();
  const unknowns: SpecificationProblem[] = [];
  for (const entry of entries) {
    const characteristic = book.find(entry.characteristic);
    if (characteristic === undefined) unknowns.push(unknown(entry));
    else
      groups.set(entry.characteristic, [
        ...(groups.get(entry.characteristic) ?? []),
        { entry, characteristic },
      ]);
  }
  const known = [...groups.values()].flatMap((group) => [
    ...group.flatMap(entryProblems),
    ...overlaps(group),
  ]);
  return [...idsTwice(entries), ...unknowns, ...known];
}
