import type { FilterForm, SavedFilter } from "@trunnion/api";
import {
  type Condition,
  characteristicBook,
  draftOf,
  foldText,
  readCondition,
  sayCondition,
} from "@trunnion/register";
import type { RegisterSearch } from "../../lib/path";
import type { Beginning } from "./filter-page";

/** The condition an address asks for: none, one, or what is wrong with it. */
export type Asked =
  | { readonly ok: true; readonly condition?: Condition }
  | { readonly ok: false; readonly problem: string };

/** Reads the condition of an address; a saved filter by its name, capitals and accents aside. */
export function askedOf({ where, filter }: RegisterSearch, saved: readonly SavedFilter[]): Asked {
  if (filter !== undefined) {
    const found = saved.find(({ name }) => foldText(name) === foldText(filter));
    if (found) return { ok: true, condition: found.condition };
    return { ok: false, problem: `there is no filter "${filter}" of yours or of the club's` };
  }
  return where === undefined ? { ok: true } : readCondition(where);
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
