import type { CharacteristicBook } from "../characteristic/book";
import { type Side, sides } from "../characteristic/characteristic";
import { deviationsFromFactory } from "../deviation/compare";
import type { Deviation } from "../deviation/deviation";
import { sayLimits } from "../deviation/line";
import type { CarEntry } from "../specification/entry";
import type { Limits } from "../specification/specification";
import { stateKey } from "../state/key";
import type { State } from "../state/state";
import { printValue, type UnitSystem } from "../value/print";
import { assemblyStation } from "./assembly-station";
import type { Check, CheckSource } from "./check";

/** A limit that an organiser sets, for the class a car is entered in or for all. */
export interface RuleLimit {
  readonly characteristic: string;
  /** `whole` also for both sides of a sided characteristic. */
  readonly side: Side;
  readonly limits: Limits;
  readonly source: CheckSource;
}

interface Ruled {
  readonly limit: RuleLimit;
  readonly deviation: Deviation;
}

function entriesOf(limit: RuleLimit, book: CharacteristicBook): readonly CarEntry[] {
  const { characteristic, side, limits, source } = limit;
  const both = book.find(characteristic)?.sided === true && side === "whole";
  const where: readonly Side[] = both ? ["left", "right"] : [side];
  return where.map((one) => ({
    id: characteristic,
    characteristic,
    side: one,
    limits,
    alternatives: [],
    applicability: {},
    source: { title: source.title, trust: "stated" },
  }));
}

function ruled(limit: RuleLimit, state: State, book: CharacteristicBook): readonly Ruled[] {
  const entries = entriesOf(limit, book);
  const keys = new Map(entries.map((entry) => [stateKey(entry.characteristic, entry.side), entry]));
  const here = new Map([...state].filter(([key]) => keys.has(key)));
  return deviationsFromFactory(here, keys, book).map((deviation) => ({
    limit,
    deviation: { ...deviation, baseline: "rules" as const },
  }));
}

/**
 * A car against an organiser's limits: one deviation per limit and side, judged with the measurement's uncertainty.
 * What is not recorded of the car is `notRecorded`, never inside.
 */
export function deviationsFromRules(
  limits: readonly RuleLimit[],
  state: State,
  book: CharacteristicBook,
): readonly Deviation[] {
  return limits.flatMap((limit) => ruled(limit, state, book)).map(({ deviation }) => deviation);
}

const verdictSays: Readonly<Partial<Record<Deviation["verdict"], string>>> = {
  outsideLimits: "outside",
  cannotTell: "too near the limit to tell",
  notRecorded: "not recorded",
  missing: "recorded as not fitted",
};

/**
 * The checks that limits make for a car: one for each that the car is not proven inside, with the figures. A car with
 * nothing recorded gets every limit to measure.
 */
export function limitChecks(
  limits: readonly RuleLimit[],
  {
    state,
    book,
    system,
  }: { readonly state: State; readonly book: CharacteristicBook; readonly system: UnitSystem },
): readonly Check[] {
  return limits.flatMap((limit): readonly Check[] => {
    const characteristic = book.find(limit.characteristic);
    if (!characteristic) return [];
    const open = ruled(limit, state, book).filter(({ deviation }) => deviation.verdict !== "insideLimits");
    if (open.length === 0) return [];
    const said = sayLimits(characteristic, limit.limits, system);
    const found = sides.flatMap((side) => {
      const one = open.find(({ deviation }) => deviation.side === side)?.deviation;
      if (!one) return [];
      const value = one.actual && printValue(characteristic, one.actual.value, { system: "asEntered" });
      const where = side === "whole" ? "" : `${side} `;
      const verdict = verdictSays[one.verdict] ?? "to be seen";
      return [`${where}${value === undefined ? verdict : `${value}, ${verdict}`}`];
    });
    const same = limit.side === "whole" ? "" : `-${limit.side}`;
    const id = `limit-${limit.characteristic
      .replace(/([a-z0-9])([A-Z])/g, "$1-$2")
      .replaceAll(".", "-")
      .toLowerCase()}`;
    return [
      {
        id: `${id}${same}`,
        station: assemblyStation[characteristic.assembly],
        assembly: characteristic.assembly,
        text: `Measure: ${characteristic.label.charAt(0).toLowerCase()}${characteristic.label.slice(1)}.`,
        criterion: { kind: "measured", characteristic: limit.characteristic, text: `it is ${said}` },
        when: { op: "always" },
        why: `the rules ask for ${said}; ${found.join("; ")}`.replace(/[{}]/g, ""),
        source: limit.source,
        reason: "rule",
      },
    ];
  });
}
