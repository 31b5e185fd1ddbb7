import {
  type Assembly,
  assemblies,
  type CarStatus,
  carStatuses,
  notationLimit,
  type Verdict,
  verdicts,
} from "@trunnion/register";
import { withoutControls } from "./address";
import type { RegisterSearch } from "./path";
import { mostColumns } from "./register-column";

export type AskedQuery = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Longest text that is looked for; what is longer cannot be a number. */
const LONGEST = 60;

/** One part of an address's query; nothing for one that is empty or came twice. */
export function queryPart(query: AskedQuery, name: string, longest = LONGEST): string | undefined {
  const given = query[name];
  const value = typeof given === "string" ? withoutControls(given).slice(0, longest) : "";
  return value === "" ? undefined : value;
}

/** Longest list of columns of an address. */
const LONGEST_COLUMNS = 400;
/** Orders of the register; by chassis number where none is asked for. */
export const listOrders = ["chassis", "built", "differing"] as const;

const oneOf = <T extends string>(known: readonly T[], text: string | undefined): T | undefined =>
  known.find((one) => one === text);

/** What was picked of the register's counts, as its procedures take it. */
export function picksOf({ status, decade, verdict, modified }: RegisterSearch): {
  readonly status?: CarStatus;
  readonly decade?: number;
  readonly verdict?: Verdict;
  readonly modified?: Assembly;
} {
  const [one, two, three] = [
    oneOf(carStatuses, status),
    oneOf(verdicts, verdict),
    oneOf(assemblies, modified),
  ];
  return {
    ...(one === undefined ? {} : { status: one }),
    ...(decade === undefined ? {} : { decade: Number(decade) }),
    ...(two === undefined ? {} : { verdict: two }),
    ...(three === undefined ? {} : { modified: three }),
  };
}

/** The columns of an address, with those that a plain form sends one by one. */
function withOne(col: string | undefined, more: AskedQuery[string]): string | undefined {
  const added = (typeof more === "string" ? [more] : (more ?? [])).map((key) =>
    withoutControls(key).slice(0, LONGEST),
  );
  const keys = [...(col ?? "").split(","), ...added].filter((key) => key !== "");
  return keys.length === 0 ? undefined : [...new Set(keys)].slice(0, mostColumns).join(",");
}

/** What an address of the register narrows it by. A condition is kept whole even if it is too long: so that it is told. */
export function registerSearch(query: AskedQuery): RegisterSearch {
  const parts = {
    q: queryPart(query, "q"),
    series: queryPart(query, "series"),
    where: queryPart(query, "where", notationLimit + 1),
    filter: queryPart(query, "filter"),
    show: queryPart(query, "show") === "unknown" ? "unknown" : undefined,
    status: oneOf(carStatuses, queryPart(query, "status")),
    decade: /^(?:-1|(?:19|20)\d0)$/.exec(queryPart(query, "decade") ?? "")?.[0],
    verdict: oneOf(verdicts, queryPart(query, "verdict")),
    modified: oneOf(assemblies, queryPart(query, "modified")),
    order: oneOf(listOrders, queryPart(query, "order")),
    col: withOne(queryPart(query, "col", LONGEST_COLUMNS), query.with),
  };
  return Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));
}
