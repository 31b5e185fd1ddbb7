import { notationLimit, readCondition, withPart, writeCondition } from "@trunnion/register";
import { withoutControls } from "./address";
import type { RegisterSearch } from "./path";
import { mostColumns } from "./register-column";
import { oneOf, orderAsked } from "./register-order";

export type AskedQuery = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Longest part of an address that is a name. */
const LONGEST = 60;
/** Longest text that is looked for, as in its field. */
const LONGEST_SEARCH = 200;

/** One part of an address's query; nothing for one that is empty or came twice. */
export function queryPart(query: AskedQuery, name: string, longest = LONGEST): string | undefined {
  const given = query[name];
  const value = typeof given === "string" ? withoutControls(given).slice(0, longest) : "";
  return value === "" ? undefined : value;
}

/** Longest order of an address: a characteristic and its direction. */
const LONGEST_ORDER = 130;
/** Longest list of columns of an address. */
const LONGEST_COLUMNS = 400;
/** What the register is looked at as. */
export const listViews = ["table", "cards"] as const;
export type ListView = (typeof listViews)[number];

const orderPart = (order: string | undefined) =>
  order !== undefined && orderAsked({ order }) !== undefined ? order : undefined;

/** The columns of an address, with those that a plain form sends one by one. */
function withOne(col: string | undefined, more: AskedQuery[string]): string | undefined {
  const added = (typeof more === "string" ? [more] : (more ?? [])).map((key) =>
    withoutControls(key).slice(0, LONGEST),
  );
  const keys = [...(col ?? "").split(","), ...added].filter((key) => key !== "");
  return keys.length === 0 ? undefined : [...new Set(keys)].slice(0, mostColumns).join(",");
}

const given = (parts: RegisterSearch | Readonly<Record<string, string | undefined>>): RegisterSearch =>
  Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));

/** What an address of the register narrows it by. A condition is kept whole even if it is too long: so that it is told. */
export function registerSearch(query: AskedQuery): RegisterSearch {
  return given({
    q: queryPart(query, "q", LONGEST_SEARCH),
    series: queryPart(query, "series"),
    where: queryPart(query, "where", notationLimit + 1),
    filter: queryPart(query, "filter"),
    show: queryPart(query, "show") === "unknown" ? "unknown" : undefined,
    order: orderPart(queryPart(query, "order", LONGEST_ORDER)),
    col: withOne(queryPart(query, "col", LONGEST_COLUMNS), query.with),
    view: oneOf(listViews, queryPart(query, "view")),
  });
}

/**
 * The same with the series, which other pages and plain forms name by itself, as a part of the condition. Where that cannot
 * be read or has no room, both stay as they are.
 */
export function asOneCondition(search: RegisterSearch): RegisterSearch {
  const { series, where, ...rest } = search;
  if (series === undefined) return search;
  const read = where === undefined ? undefined : readCondition(where);
  if (read && !read.ok) return search;
  const whole = withPart(read?.condition, { op: "series", in: [series] });
  return whole === undefined ? search : { ...rest, where: writeCondition(whole) };
}
