import type { CharacteristicBook } from "../characteristic/book";
import { sides } from "../characteristic/characteristic";
import { type CarView, evaluate } from "../condition/evaluate";
import { characteristicsOf, nodesOf } from "../condition/schema";
import { stateKey } from "../state/key";
import { printValue } from "../value/print";
import type { Check, CheckOnSheet, CheckReason } from "./check";

function printed(key: string, part: string | undefined, view: CarView, book: CharacteristicBook): string {
  const characteristic = book.find(key);
  if (!characteristic) return "not recorded";
  const texts = sides.flatMap((side) => {
    const deviation = view.deviations.find((one) => one.characteristic === key && one.side === side);
    const value = part === "nominal" ? deviation?.nominal : view.state.get(stateKey(key, side))?.value;
    const text =
      part === "ratio"
        ? deviation?.ratio?.toFixed(2)
        : value && printValue(characteristic, value, { system: "asEntered" });
    return text === undefined ? [] : [side === "whole" ? text : `${side} ${text}`];
  });
  return texts.length === 0 ? "not recorded" : texts.join(", ");
}

/** Fills the places of a reason with the car's figures. */
export function fillWhy(why: string, view: CarView, book: CharacteristicBook): string {
  return why.replace(/\{([A-Za-z0-9.]+)(?::(nominal|ratio))?\}/g, (_, key: string, part?: string) =>
    printed(key, part, view, book),
  );
}

function reasonOf(check: Check, view: CarView): CheckReason {
  const nodes = nodesOf(check.when);
  if (nodes.every(({ op }) => op === "always")) return "always";
  if (nodes.some(({ op }) => op === "date")) return "expiry";
  const keys = characteristicsOf(check.when);
  const changed = keys.some((key) =>
    sides.some((side) =>
      ["modification", "reading"].includes(view.state.get(stateKey(key, side))?.origin ?? ""),
    ),
  );
  return changed ? "modification" : "rule";
}

/** Characteristics a condition looks at of which nothing is known for this car. */
function unknownKeys(check: Check, view: CarView): readonly string[] {
  return characteristicsOf(check.when).filter((key) =>
    sides.every(
      (side) => (view.state.get(stateKey(key, side))?.origin ?? "specification") === "specification",
    ),
  );
}

function gather(
  undecided: readonly Check[],
  view: CarView,
  book: CharacteristicBook,
): readonly CheckOnSheet[] {
  const byStation = new Map<Check["station"], Set<string>>();
  const first = new Map<Check["station"], Check>();
  for (const check of undecided) {
    const labels = byStation.get(check.station) ?? new Set();
    for (const key of unknownKeys(check, view)) labels.add(book.find(key)?.label ?? key);
    byStation.set(check.station, labels);
    if (!first.has(check.station)) first.set(check.station, check);
  }
  return [...first].flatMap(([station, example]) => {
    const labels = [...(byStation.get(station) ?? [])].sort();
    if (labels.length === 0) return [];
    const check: Check = {
      id: `not-recorded-${station}`,
      station,
      assembly: example.assembly,
      text: `See what is fitted, and write it down: ${labels.join("; ")}.`,
      criterion: { kind: "seen" },
      when: { op: "always" },
      source: { title: "The record of this car" },
    };
    const why = "Checks that depend on it could not be decided.";
    return [{ check, reason: "rule" as const, why, undecided: true }];
  });
}

/**
 * The checks one car needs: those whose condition holds, in the order given, each with its reason. Where the record
 * does not tell whether a check applies it is never left out silently: what is not known is gathered, per station,
 * into one check to look and write it down.
 */
export function checksForCar(
  checks: readonly Check[],
  view: CarView,
  book: CharacteristicBook,
): readonly CheckOnSheet[] {
  const judged = checks.map((check) => ({ check, truth: evaluate(check.when, view) }));
  const standing = judged.flatMap(({ check, truth }): CheckOnSheet[] => {
    if (truth !== "yes") return [];
    const reason = reasonOf(check, view);
    const why = check.why === undefined ? "every car" : fillWhy(check.why, view, book);
    return [{ check, reason, why, undecided: false }];
  });
  const undecided = judged.filter(({ truth }) => truth === "unknown").map(({ check }) => check);
  return [...standing, ...gather(undecided, view, book)];
}
