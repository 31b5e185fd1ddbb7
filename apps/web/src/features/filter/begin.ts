import type { FilterForm, SavedFilter } from "@trunnion/api";
import {
  type Condition,
  characteristicBook,
  draftOf,
  foldText,
  readCondition,
  sayCondition,
  togetherCondition,
} from "@trunnion/register";
import type { RegisterSearch } from "../../lib/path";
import type { Beginning } from "./filter-page";

/** The condition an address asks for: none, one, or what is wrong with it. `beside`: what of it no saved filter says. */
export type Asked =
  | { readonly ok: true; readonly condition?: Condition; readonly beside?: Condition }
  | { readonly ok: false; readonly problem: string };

/**
 * Reads the condition of an address: a saved filter by its name, capitals and accents aside, one written there, or both
 * together.
 */
export function askedOf(
  { where, filter }: Pick<RegisterSearch, "where" | "filter">,
  saved: readonly SavedFilter[],
): Asked {
  const named = saved.find(({ name }) => filter !== undefined && foldText(name) === foldText(filter));
  if (filter !== undefined && !named)
    return { ok: false, problem: `there is no filter "${filter}" of yours or of the club's` };
  const read = where === undefined ? undefined : readCondition(where);
  if (read && !read.ok) return read;
  const condition = togetherCondition(named?.condition, read?.condition);
  return {
    ok: true,
    ...(condition === undefined ? {} : { condition }),
    ...(read === undefined ? {} : { beside: read.condition }),
  };
}

/** What the form begins with, for the condition an address asks for. */
export function beginningOf(asked: Asked, { own, series, system }: FilterForm): Beginning {
  if (!asked.ok) return { as: "broken", problem: asked.problem };
  const { condition } = asked;
  if (condition === undefined) return { as: "empty" };
  const book = characteristicBook(own);
  const names = new Map(series.map(({ slug, name }) => [slug, name]));
  const said = sayCondition(condition, book, { series: names, system, day: "today" });
  const draft = draftOf(condition, { book, system });
  return draft === undefined ? { as: "words", said } : { as: "draft", draft, said };
}
