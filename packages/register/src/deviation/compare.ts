import { verdict as conformity, coverageFactor, resolutionUncertainty } from "@trunnion/calc";
import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import type { CarEntries, CarEntry } from "../specification/entry";
import type { Alternative, AlternativeRole, Limits } from "../specification/specification";
import { stateKey } from "../state/key";
import type { AsBuiltValue, State, StateValue } from "../state/state";
import { fulfils, sameValue } from "../value/same";
import type { Value } from "../value/value";
import { type Deviation, type Verdict, verdicts } from "./deviation";

const roleVerdicts: Readonly<Record<AlternativeRole, Verdict>> = {
  periodOption: "periodOption",
  acceptedSubstitute: "acceptedSubstitute",
  serviceReplacement: "acceptedSubstitute",
};

/**
 * Expanded uncertainty (k = 2) of a value, SI. The one stated with it; else, for a reading and for anything that is
 * set and measured, the least that its notation alone implies: a rectangular step, 2 · resolution / √12 (GUM F.2.2.1).
 * The true one is larger, never smaller, so such a value may still be called proven that a known instrument would
 * leave open. A part's size is what it is stamped or sold as, and carries none.
 */
export function uncertaintyOf(actual: StateValue, characteristic: Characteristic | undefined): number {
  if (actual.expandedUncertainty !== undefined) return actual.expandedUncertainty;
  const measured = actual.origin === "reading" || characteristic?.setting === true;
  return measured && actual.value.kind === "quantity"
    ? coverageFactor * resolutionUncertainty(actual.value.resolution)
    : 0;
}

const words = { inside: "insideLimits", outside: "outsideLimits", cannotTell: "cannotTell" } as const;

interface Judged {
  readonly verdict: Verdict;
  readonly alternative?: Alternative;
}

interface Comparison {
  readonly actual: StateValue;
  readonly entry: CarEntry;
  readonly characteristic: Characteristic | undefined;
}

function againstLimits({ actual, characteristic }: Comparison, limits: Limits): Verdict {
  if (actual.value.kind !== "quantity") return "cannotTell";
  const guard = uncertaintyOf(actual, characteristic);
  return words[conformity({ value: actual.value.si, expandedUncertainty: guard, limits })];
}

/** Where neither nominal nor alternative nor limits decide: a part is another one, a setting has no measure. */
function unlike({ actual, entry, characteristic }: Comparison): Verdict {
  if (actual.value.kind === "absent") return "missing";
  if (entry.nominal?.kind === "absent") return "added";
  if (entry.limits !== undefined) return againstLimits({ actual, entry, characteristic }, entry.limits);
  return characteristic?.setting === true ? "cannotTell" : "differentPart";
}

/** A measured value with limits is judged by them alone: agreeing with the nominal proves nothing. */
function againstEntry(comparison: Comparison): Judged {
  const { actual, entry, characteristic } = comparison;
  if (entry.undecided) return { verdict: "cannotTell" };
  const { nominal, alternatives } = entry;
  const byLimits = entry.limits !== undefined && characteristic?.setting === true;
  if (!byLimits && nominal && fulfils(actual.value, nominal)) return { verdict: "asSpecified" };
  const alternative = alternatives.find(({ value }) => fulfils(actual.value, value));
  if (alternative) return { verdict: roleVerdicts[alternative.role], alternative };
  return { verdict: unlike(comparison) };
}

function differenceOf(nominal: Value | undefined, actual: Value): Pick<Deviation, "difference" | "ratio"> {
  if (nominal?.kind !== "quantity" || actual.kind !== "quantity") return {};
  const difference = actual.si - nominal.si;
  return nominal.si === 0 ? { difference } : { difference, ratio: actual.si / nominal.si };
}

function judge(
  actual: StateValue | undefined,
  entry: CarEntry | undefined,
  characteristic: Characteristic | undefined,
): Judged {
  // The specification itself is no knowledge of this car: assumed, never a pass.
  if (!actual || actual.origin === "specification") return { verdict: "notRecorded" };
  if (entry) return againstEntry({ actual, entry, characteristic });
  return { verdict: actual.value.kind === "absent" ? "asSpecified" : "added" };
}

const rank = new Map(verdicts.map((verdict, index) => [verdict, index]));

const orders = new WeakMap<CharacteristicBook, ReadonlyMap<string, number>>();

/** Places in the dictionary, worked out once per book: they are asked for with every car. */
function orderOf(book: CharacteristicBook): ReadonlyMap<string, number> {
  const order = orders.get(book) ?? new Map(book.all.map(({ key }, index) => [key, index]));
  orders.set(book, order);
  return order;
}

/** Worst first; within a verdict in the dictionary's order. */
function worstFirst(deviations: readonly Deviation[], book: CharacteristicBook): readonly Deviation[] {
  const order = orderOf(book);
  const last = book.all.length;
  const placed = deviations.map((deviation) => {
    const { verdict, characteristic, side } = deviation;
    const place = (rank.get(verdict) ?? 0) * (last + 1) + (order.get(characteristic) ?? last);
    return { deviation, place: 2 * place + (side === "right" ? 1 : 0) };
  });
  return placed.sort((a, b) => a.place - b.place).map(({ deviation }) => deviation);
}

function isTold(entry: CarEntry | undefined, characteristic: Characteristic | undefined): boolean {
  return entry !== undefined || (characteristic?.removable === true && !characteristic.setting);
}

type Filling = { -readonly [Field in keyof Deviation]: Deviation[Field] };

function againstFactory(place: string, { state, entries, book }: FactoryComparison): Deviation | undefined {
  const entry = entries.get(place);
  const actual = state.get(place);
  const of = entry ?? actual;
  const characteristic = of && book.find(of.characteristic);
  if (!of || !isTold(entry, characteristic)) return undefined;
  const { verdict, alternative } = judge(actual, entry, characteristic);
  const { characteristic: key, side } = of;
  // Filled in step by step: made by spreading, some two hundred per car cost more than the comparison.
  const told: Filling = { characteristic: key, side, baseline: "factory", verdict };
  if (alternative !== undefined) told.alternative = alternative;
  if (entry?.nominal !== undefined) told.nominal = entry.nominal;
  if (entry?.limits !== undefined) told.limits = entry.limits;
  if (entry !== undefined) told.entry = entry;
  if (actual !== undefined) Object.assign(told, { actual }, differenceOf(entry?.nominal, actual.value));
  return told;
}

interface FactoryComparison {
  readonly state: State;
  readonly entries: CarEntries;
  readonly book: CharacteristicBook;
}

/**
 * A car compared with what the factory specified for it: one deviation per characteristic and side that the
 * specification speaks of or that was added, worst first. What the specification does not mention but the record has
 * is `added` only for parts that can be left off: of anything else (a colour, a tread depth) the specification is
 * silent, and there is nothing to compare.
 *
 * What is known of the car only through the specification is `notRecorded`; where it is not known which entry holds
 * for the car, or a setting has a nominal but no limits and differs, the verdict is `cannotTell`.
 */
export function deviationsFromFactory(
  state: State,
  entries: CarEntries,
  book: CharacteristicBook,
): readonly Deviation[] {
  const keys = [...new Set([...entries.keys(), ...state.keys()])];
  const deviations = keys.map((key) => againstFactory(key, { state, entries, book }));
  return worstFirst(
    deviations.filter((one) => one !== undefined),
    book,
  );
}

/**
 * A car compared with what it left the works with, for the characteristics whose as-built value is known; worst
 * first. A setting that differs from the as-built one is told, but is no different part.
 */
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
      verdict: againstBuilt(value, actual, book.find(characteristic)),
      nominal: value,
      ...(actual === undefined ? {} : { actual, ...differenceOf(value, actual.value) }),
    };
  });
  return worstFirst(deviations, book);
}

function againstBuilt(
  built: Value,
  actual: StateValue | undefined,
  characteristic: Characteristic | undefined,
): Verdict {
  if (!actual || actual.origin === "specification") return "notRecorded";
  if (sameValue(built, actual.value)) return "asSpecified";
  if (actual.value.kind === "absent") return "missing";
  if (built.kind === "absent") return "added";
  return characteristic?.setting === true ? "cannotTell" : "differentPart";
}

const silent: ReadonlySet<Verdict> = new Set(["asSpecified", "insideLimits", "notRecorded"]);

/** The deviations worth telling: everything but what is as it should be, and what is not recorded. */
export function deviating(deviations: readonly Deviation[]): readonly Deviation[] {
  return deviations.filter(({ verdict }) => !silent.has(verdict));
}
