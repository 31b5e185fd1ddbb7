import { verdict as conformity } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import type { CarEntries, CarEntry } from "../specification/entry";
import type { AlternativeRole, Limits } from "../specification/specification";
import { stateKey } from "../state/key";
import type { AsBuiltValue, State, StateValue } from "../state/state";
import { sameValue } from "../value/same";
import type { Value } from "../value/value";
import { type Deviation, type Verdict, verdicts } from "./deviation";

const roleVerdicts: Readonly<Record<AlternativeRole, Verdict>> = {
  periodOption: "periodOption",
  acceptedSubstitute: "acceptedSubstitute",
  serviceReplacement: "acceptedSubstitute",
};

/**
 * Expanded uncertainty (k = 2) of a reading, in SI: the one stated, else the least that the notation itself
 * implies, a rectangular step: 2 · resolution / √12. The true one is larger, never smaller.
 */
export function uncertaintyOf(actual: StateValue): number {
  if (actual.expandedUncertainty !== undefined) return actual.expandedUncertainty;
  return actual.value.kind === "quantity" ? (2 * actual.value.resolution) / Math.sqrt(12) : 0;
}

const words = { inside: "insideLimits", outside: "outsideLimits", cannotTell: "cannotTell" } as const;

function againstLimits(actual: StateValue, limits: Limits): Verdict {
  if (actual.value.kind !== "quantity") return "cannotTell";
  const { si: value } = actual.value;
  // A part's size is what it is stamped or sold as: only what was measured carries an uncertainty.
  const expandedUncertainty = actual.origin === "reading" ? uncertaintyOf(actual) : 0;
  return words[conformity({ value, expandedUncertainty, limits })];
}

function againstEntry(
  actual: StateValue,
  entry: CarEntry,
  characteristic: Characteristic | undefined,
): Verdict {
  if (entry.undecided) return "cannotTell";
  const { value } = actual;
  const { nominal, limits, alternatives } = entry;
  const setting = characteristic?.setting ?? false;
  if (!setting && nominal && sameValue(value, nominal)) return "asSpecified";
  const alternative = alternatives.find((one) => sameValue(value, one.value));
  if (alternative) return roleVerdicts[alternative.role];
  if (value.kind === "absent")
    return nominal === undefined && limits === undefined ? "asSpecified" : "missing";
  if (nominal?.kind === "absent") return "added";
  if (limits) return againstLimits(actual, limits);
  return nominal && sameValue(value, nominal) ? "asSpecified" : "differentPart";
}

function differenceOf(nominal: Value | undefined, actual: Value): Pick<Deviation, "difference" | "ratio"> {
  if (nominal?.kind !== "quantity" || actual.kind !== "quantity") return {};
  const difference = actual.si - nominal.si;
  return nominal.si === 0 ? { difference } : { difference, ratio: actual.si / nominal.si };
}

function verdictAgainst(
  actual: StateValue | undefined,
  entry: CarEntry | undefined,
  characteristic: Characteristic | undefined,
): Verdict {
  // The specification itself is no knowledge of this car: assumed, never a pass.
  if (!actual || actual.origin === "specification") return "notRecorded";
  if (!entry) return actual.value.kind === "absent" ? "asSpecified" : "added";
  return againstEntry(actual, entry, characteristic);
}

const rank = new Map(verdicts.map((verdict, index) => [verdict, index]));

/** Worst first; within a verdict in the dictionary's order. */
function worstFirst(deviations: readonly Deviation[], book: CharacteristicBook): readonly Deviation[] {
  const order = new Map(book.all.map(({ key }, index) => [key, index]));
  const place = ({ verdict, characteristic, side }: Deviation) =>
    [rank.get(verdict) ?? 0, order.get(characteristic) ?? book.all.length, side === "right" ? 1 : 0] as const;
  return [...deviations].sort((a, b) => {
    const [one, other] = [place(a), place(b)];
    return one[0] - other[0] || one[1] - other[1] || one[2] - other[2];
  });
}

/**
 * A car compared with what the factory specified for it: one deviation per characteristic and side that the
 * specification or the car speaks of, worst first. What the specification does not mention but the record has is
 * `added` only for parts that can be left off; for anything else the specification is silent, and nothing is said.
 */
export function deviationsFromFactory(
  state: State,
  entries: CarEntries,
  book: CharacteristicBook,
): readonly Deviation[] {
  const keys = new Set([...entries.keys(), ...state.keys()]);
  const deviations = [...keys].flatMap((key): Deviation[] => {
    const entry = entries.get(key);
    const actual = state.get(key);
    const place = entry ?? actual;
    if (!place) return [];
    const characteristic = book.find(place.characteristic);
    if (!entry && !characteristic?.removable) return [];
    return [
      {
        characteristic: place.characteristic,
        side: place.side,
        baseline: "factory",
        verdict: verdictAgainst(actual, entry, characteristic),
        ...(entry?.nominal === undefined ? {} : { nominal: entry.nominal }),
        ...(entry?.limits === undefined ? {} : { limits: entry.limits }),
        ...(entry === undefined ? {} : { entry }),
        ...(actual === undefined ? {} : { actual, ...differenceOf(entry?.nominal, actual.value) }),
      },
    ];
  });
  return worstFirst(deviations, book);
}

/** A car compared with what it left the works with, for the characteristics whose as-built value is known. */
export function deviationsFromAsBuilt(
  state: State,
  asBuilt: readonly AsBuiltValue[],
  book: CharacteristicBook,
): readonly Deviation[] {
  const deviations = asBuilt.map(({ characteristic, side, value }): Deviation => {
    const actual = state.get(stateKey(characteristic, side));
    return {
      characteristic,
      side,
      baseline: "asBuilt",
      verdict: againstBuilt(value, actual),
      nominal: value,
      ...(actual === undefined ? {} : { actual, ...differenceOf(value, actual.value) }),
    };
  });
  return worstFirst(deviations, book);
}

function againstBuilt(built: Value, actual: StateValue | undefined): Verdict {
  if (!actual || actual.origin === "specification") return "notRecorded";
  if (sameValue(built, actual.value)) return "asSpecified";
  if (actual.value.kind === "absent") return "missing";
  return built.kind === "absent" ? "added" : "differentPart";
}

const silent: ReadonlySet<Verdict> = new Set(["asSpecified", "insideLimits", "notRecorded"]);

/** The deviations worth telling: everything but what is as it should be, and what is not recorded. */
export function deviating(deviations: readonly Deviation[]): readonly Deviation[] {
  return deviations.filter(({ verdict }) => !silent.has(verdict));
}
