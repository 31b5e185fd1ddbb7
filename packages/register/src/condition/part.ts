import type { Condition } from "./condition";
import { notationLimit, writeCondition } from "./notation";
import { conditionLimits, nodesOf } from "./schema";

/** What must hold together, one by one: the parts of an outermost `all`, else the condition itself; none for none. */
export function partsOfCondition(condition: Condition | undefined): readonly Condition[] {
  if (condition === undefined || condition.op === "always") return [];
  return condition.op === "all" ? condition.of : [condition];
}

const joined = (parts: readonly Condition[]): Condition | undefined => {
  const [only] = parts;
  return parts.length > 1 ? { op: "all", of: parts } : only;
};

const isSame = (one: Condition, other: Condition) => writeCondition(one) === writeCondition(other);

/** Two conditions that must both hold, part by part; where there is one of them, that one. */
export const togetherCondition = (
  one: Condition | undefined,
  other: Condition | undefined,
): Condition | undefined =>
  joined([...partsOfCondition(one), ...partsOfCondition(other).filter((part) => !hasPart(one, part))]);

/** Whether a part stands among those that must hold together. */
export const hasPart = (condition: Condition | undefined, part: Condition): boolean =>
  partsOfCondition(condition).some((one) => isSame(one, part));

/** The condition without a part of it; `undefined` where nothing is left. */
export function withoutPart(condition: Condition | undefined, part: Condition): Condition | undefined {
  return joined(partsOfCondition(condition).filter((one) => !isSame(one, part)));
}

/**
 * The condition with a part more, last; the same where it has it. `undefined` where it would have more parts, levels or
 * characters than a condition in an address may.
 */
export function withPart(condition: Condition | undefined, part: Condition): Condition | undefined {
  if (condition !== undefined && hasPart(condition, part)) return condition;
  const whole = joined([...partsOfCondition(condition), part]) ?? part;
  const fits =
    partsOfCondition(whole).length <= conditionLimits.list &&
    nodesOf(whole).length <= conditionLimits.nodes &&
    writeCondition(whole).length <= notationLimit;
  return fits ? whole : undefined;
}
