import { notationLimit } from "@trunnion/register";
import { withoutControls } from "./address";
import type { RegisterSearch } from "./path";

export type AskedQuery = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Longest text that is looked for; what is longer cannot be a number. */
const LONGEST = 60;

/** One part of an address's query; nothing for one that is empty or came twice. */
export function queryPart(query: AskedQuery, name: string, longest = LONGEST): string | undefined {
  const given = query[name];
  const value = typeof given === "string" ? withoutControls(given).slice(0, longest) : "";
  return value === "" ? undefined : value;
}

/** What an address of the register narrows it by. A condition is kept whole even if it is too long: so that it is told. */
export function registerSearch(query: AskedQuery): RegisterSearch {
  const parts = {
    q: queryPart(query, "q"),
    series: queryPart(query, "series"),
    where: queryPart(query, "where", notationLimit + 1),
    filter: queryPart(query, "filter"),
    show: queryPart(query, "show") === "unknown" ? "unknown" : undefined,
  };
  return Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));
}
