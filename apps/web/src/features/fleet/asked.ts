import type { SavedFilter } from "@trunnion/api";
import type { Condition } from "@trunnion/register";
import type { FleetQuery } from "../../lib/path";
import { type AskedQuery, registerSearch } from "../../lib/register-search";
import { type Asked, askedOf } from "../filter/begin";

/** The part of an address that says which cars are meant. */
export function fleetQuery(query: AskedQuery): FleetQuery {
  const { series, where, filter } = registerSearch(query);
  return {
    ...(series === undefined ? {} : { series }),
    ...(where === undefined ? {} : { where }),
    ...(filter === undefined ? {} : { filter }),
  };
}

/** The same as a procedure takes it; nothing where the condition cannot be read: never every car in its place. */
export function fleetInput(
  { series, ...condition }: FleetQuery,
  saved: readonly SavedFilter[],
): { readonly asked: Asked; readonly input?: { readonly series?: string; readonly condition?: Condition } } {
  const asked = askedOf(condition, saved);
  if (!asked.ok) return { asked };
  return {
    asked,
    input: {
      ...(series === undefined ? {} : { series }),
      ...(asked.condition === undefined ? {} : { condition: asked.condition }),
    },
  };
}
