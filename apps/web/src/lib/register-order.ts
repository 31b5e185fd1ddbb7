import type { RouterInputs } from "@trunnion/api";
import type { RegisterSearch } from "./path";

/** The one of a closed list that a text is. */
export const oneOf = <T extends string>(known: readonly T[], text: string | undefined): T | undefined =>
  known.find((one) => one === text);

/** Orders of the register; by chassis number where none is asked for. */
export const listOrders = ["chassis", "built", "differing"] as const;
/** By what cars have of a characteristic, as an address names it: `up.front.camber` with the lowest first. */
const valueOrder = /^(up|down)\.(\S{1,120})$/;

/** An order of the list as it is asked for. */
export type AskedOrder = NonNullable<RouterInputs["car"]["list"]["order"]>;

/** What an address orders the list by; nothing where it names no order. */
export function orderAsked({ order = "" }: RegisterSearch): AskedOrder | undefined {
  const [, direction, key] = valueOrder.exec(order) ?? [];
  if (key !== undefined) return { key, descending: direction === "down" };
  return oneOf(listOrders, order);
}

/** How an address names the order by a characteristic. */
export const orderBy = (key: string, descending: boolean): string => `${descending ? "down" : "up"}.${key}`;
