import { type Condition, hasPart, withoutPart, withPart, writeCondition } from "@trunnion/register";
import { type RegisterSearch, registerPath } from "../../lib/path";

/** What a list is narrowed by: its address, and the conditions that address comes to. */
export interface Narrowing {
  readonly club: string;
  readonly search: RegisterSearch;
  /** Everything that must hold. */
  readonly condition?: Condition;
  /** What of it stands beside a saved filter, or by itself. */
  readonly beside?: Condition;
}

function pathOf({ club, search }: Narrowing, where: Condition | undefined, keepFilter: boolean): string {
  const { where: _where, filter, show: _show, ...rest } = search;
  return registerPath(club, {
    ...rest,
    ...(keepFilter && filter !== undefined ? { filter } : {}),
    ...(where === undefined ? {} : { where: writeCondition(where) }),
  });
}

/** The list without a part of its condition; a saved filter that says it gives way to what is left of it. */
export function pathWithout(narrowing: Narrowing, part: Condition): string {
  const { condition, beside } = narrowing;
  if (hasPart(beside, part)) return pathOf(narrowing, withoutPart(beside, part), true);
  return pathOf(narrowing, withoutPart(condition, part), false);
}

/** The list narrowed by a part more; `undefined` where an address has no room for it. */
export function pathWith(narrowing: Narrowing, part: Condition): string | undefined {
  const whole = withPart(narrowing.beside, part);
  return whole === undefined ? undefined : pathOf(narrowing, whole, true);
}
