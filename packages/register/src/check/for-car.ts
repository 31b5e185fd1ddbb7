import type { CharacteristicBook } from "../characteristic/book";
import { type Characteristic, type Side, sides } from "../characteristic/characteristic";
import { type CarView, evaluate } from "../condition/evaluate";
import { characteristicsOf, nodesOf } from "../condition/schema";
import { isFigure, WorkedFigures } from "../consequence/worked-figure";
import { angleOnSheet, isAngle, limitsOnSheet } from "../sheet/angle";
import { stateKey } from "../state/key";
import { printValue } from "../value/print";
import type { Check, CheckOnSheet, CheckReason } from "./check";

type Part = "value" | "nominal" | "ratio" | "stiffness" | "limits";

/** Bending and torsion of a round bar go with the fourth power of its diameter. */
const stiffnessOf = (ratio: number) => `× ${(ratio ** 4).toFixed(1)}`;

interface Asked {
  readonly view: CarView;
  readonly characteristic: Characteristic;
}

function partOn(side: Side, part: Part, { view, characteristic }: Asked): string | undefined {
  const { key } = characteristic;
  const deviation = view.deviations.find((one) => one.characteristic === key && one.side === side);
  if (part === "ratio") return deviation?.ratio?.toFixed(2);
  if (part === "stiffness") return deviation?.ratio === undefined ? undefined : stiffnessOf(deviation.ratio);
  if (part === "limits") {
    return deviation?.limits && limitsOnSheet(characteristic, deviation.limits, "metric", deviation.nominal);
  }
  const said = part === "nominal" ? deviation?.nominal : view.state.get(stateKey(key, side))?.value;
  if (said?.kind === "quantity" && isAngle(characteristic)) return angleOnSheet(said.si);
  return said && printValue(characteristic, said, { system: "asEntered" });
}

function printed(key: string, part: Part, view: CarView, book: CharacteristicBook): string {
  const characteristic = book.find(key);
  if (!characteristic) return "not recorded";
  const told = sides.flatMap((side) => {
    const text = partOn(side, part, { view, characteristic });
    return text === undefined ? [] : [{ side, text }];
  });
  const [first] = told;
  if (!first) return "not recorded";
  // What both sides share is said once.
  if (told.length > 1 && part !== "value" && told.every(({ text }) => text === first.text)) return first.text;
  return told.map(({ side, text }) => (side === "whole" ? text : `${side} ${text}`)).join(", ");
}

/** Places of a reason: `{work:binding/output}`, `{key}` or `{key:part}`. */
const places =
  /\{(?:work:([A-Za-z0-9.]+)\/([A-Za-z0-9]+)|([A-Za-z0-9.]+)(?::(nominal|ratio|stiffness|limits))?)\}/g;

/** What cannot be filled in a reason: characteristics and figures that do not exist, and braces that are no place. */
export function whyProblems(why: string, book: CharacteristicBook): readonly string[] {
  const unknown = [...why.matchAll(places)].flatMap(([whole, binding, output, key]) => {
    const known = key === undefined ? isFigure(binding ?? "", output ?? "") : book.find(key) !== undefined;
    return known ? [] : [whole];
  });
  const rest = why.replace(places, "").match(/\{[^}]*\}?/g) ?? [];
  return [...unknown, ...rest];
}

/** Fills the places of a reason with the car's figures: as recorded, as specified, or worked out. */
export function fillWhy(
  why: string,
  view: CarView,
  book: CharacteristicBook,
  figures = new WorkedFigures(view.state, book),
): string {
  return why.replace(
    places,
    (_, binding: string | undefined, output: string | undefined, key = "", part: Part = "value") =>
      binding !== undefined && output !== undefined
        ? figures.say(binding, output)
        : printed(key, part, view, book),
  );
}

function reasonOf(check: Check, view: CarView): CheckReason {
  if (check.reason !== undefined) return check.reason;
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

/** "Front disc face" and "Rear disc face" are one thing to look at: "Disc face, front and rear". */
function bothAxles(labels: readonly string[]): readonly string[] {
  const rear = new Set(labels.filter((label) => label.startsWith("Rear ")).map((label) => label.slice(5)));
  const both = labels
    .filter((label) => label.startsWith("Front ") && rear.has(label.slice(6)))
    .map((label) => label.slice(6));
  const joined = new Set(both);
  const alone = labels.filter((label) => !joined.has(label.replace(/^(Front|Rear) /, "")));
  const told = both.map((label) => `${label.charAt(0).toUpperCase()}${label.slice(1)}, front and rear`);
  return [...told, ...alone].sort();
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
    const labels = bothAxles([...(byStation.get(station) ?? [])].sort());
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
  const figures = new WorkedFigures(view.state, book);
  const judged = checks.map((check) => ({ check, truth: evaluate(check.when, view) }));
  const standing = judged.flatMap(({ check, truth }): CheckOnSheet[] => {
    if (truth !== "yes") return [];
    const reason = reasonOf(check, view);
    const why = check.why === undefined ? "every car" : fillWhy(check.why, view, book, figures);
    return [{ check, reason, why, undecided: false }];
  });
  const undecided = judged.filter(({ truth }) => truth === "unknown").map(({ check }) => check);
  return [...standing, ...gather(undecided, view, book)];
}
