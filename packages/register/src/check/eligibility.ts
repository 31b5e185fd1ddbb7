import type { CharacteristicBook } from "../characteristic/book";
import { sides } from "../characteristic/characteristic";
import type { Condition, Truth } from "../condition/condition";
import { type CarView, evaluate } from "../condition/evaluate";
import { type SayOptions, sayCondition } from "../condition/say";
import { stateKey } from "../state/key";
import { printValue } from "../value/print";

/** One thing that keeps a car out of a class, or leaves it open. */
export interface Obstacle {
  readonly truth: Exclude<Truth, "yes">;
  /** What the class asks for, in words. */
  readonly asks: string;
  /** What the car has; empty for what is not about a characteristic. */
  readonly has: string;
  /** What the factory fitted, to be put back; empty where that would not meet the condition or is not known. */
  readonly factory: string;
}

/** Whether a car may enter a class, with everything that stands in the way. */
export interface Eligibility {
  readonly truth: Truth;
  readonly obstacles: readonly Obstacle[];
}

interface Leaf {
  readonly condition: Condition;
  readonly truth: Truth;
}

/** `not` pushed inwards, so that what is left are leaves, plain or each denied. */
function leavesOf(condition: Condition, view: CarView, denied = false): readonly Leaf[] {
  if (condition.op === "not") return leavesOf(condition.of, view, !denied);
  if (condition.op === "all" || condition.op === "any")
    return condition.of.flatMap((part) => leavesOf(part, view, denied));
  const whole: Condition = denied ? { op: "not", of: condition } : condition;
  return [{ condition: whole, truth: evaluate(whole, view) }];
}

const aboutOf = (condition: Condition): string => {
  const leaf = condition.op === "not" ? condition.of : condition;
  return "characteristic" in leaf ? leaf.characteristic : "";
};

function valueOn(key: string, view: CarView, book: CharacteristicBook): string {
  const characteristic = book.find(key);
  if (!characteristic) return "";
  const told = sides.flatMap((side) => {
    const value = view.state.get(stateKey(key, side));
    if (!value || value.origin === "specification") return [];
    const text = printValue(characteristic, value.value, { system: "asEntered" });
    return [side === "whole" ? text : `${side} ${text}`];
  });
  return told.length === 0 ? "not recorded" : told.join(", ");
}

/** The car with one characteristic as the factory had it. */
function putBack(key: string, view: CarView): CarView | undefined {
  const state = new Map(view.state);
  const deviations = view.deviations.map((deviation) => {
    const { characteristic, side, nominal } = deviation;
    if (characteristic !== key || nominal === undefined) return deviation;
    const { actual, difference: _difference, ratio: _ratio, ...rest } = deviation;
    const put = {
      ...(actual ?? { source: { title: "specification", trust: "documented" } }),
      value: nominal,
      origin: "modification",
    } as NonNullable<typeof actual>;
    state.set(stateKey(key, side), put);
    return { ...rest, verdict: "asSpecified" as const, actual: put };
  });
  const known = view.deviations.some(({ characteristic, nominal }) => characteristic === key && nominal);
  return known ? { ...view, state, deviations } : undefined;
}

function factoryOf(condition: Condition, view: CarView, book: CharacteristicBook): string {
  const key = aboutOf(condition);
  const characteristic = book.find(key);
  const back = characteristic && putBack(key, view);
  if (!back || evaluate(condition, back) !== "yes") return "";
  const nominal = view.deviations.find((one) => one.characteristic === key && one.nominal)?.nominal;
  return nominal ? printValue(characteristic, nominal, { system: "asEntered" }) : "";
}

/**
 * Whether a car may enter a class, and what would have to be put back: the leaves of the condition that fail or cannot
 * be told, each with what the car has, and with what the factory fitted where that meets it. Where any of several would
 * do, all that fail are told: one of them is enough.
 */
export function eligibilityOf(
  condition: Condition,
  view: CarView,
  { book, say }: { readonly book: CharacteristicBook; readonly say: SayOptions },
): Eligibility {
  const truth = evaluate(condition, view);
  if (truth === "yes") return { truth, obstacles: [] };
  const obstacles = leavesOf(condition, view).flatMap(({ condition: leaf, truth: here }): Obstacle[] => {
    if (here === "yes") return [];
    const key = aboutOf(leaf);
    return [
      {
        truth: here,
        asks: sayCondition(leaf, book, say),
        has: key === "" ? "" : valueOn(key, view, book),
        factory: factoryOf(leaf, view, book),
      },
    ];
  });
  return { truth, obstacles };
}
