"use server";
import type { RouterInputs } from "@trunnion/api";
import {
  characteristicBook,
  draftFields,
  draftFrom,
  editDraft,
  Invalid,
  notationLimit,
  readDraft,
  writeCondition,
} from "@trunnion/register";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { filterPath, type RegisterSearch, registerPath, savedFiltersPath } from "../../lib/path";
import { api } from "../../lib/service";
import { editOf, refresh } from "./button";

type Kept = Omit<RegisterSearch, "where" | "filter" | "series" | "show">;

/** The address of a draft's condition; everything wrong with it at once, each at its field. */
async function addressOf(club: string, entered: unknown): Promise<string> {
  const { own, system, today } = await (await api()).filter.form({ club });
  const read = readDraft(draftFrom(entered), { book: characteristicBook(own), system, today });
  if (!read.ok) throw new Invalid(read.problems);
  const where = writeCondition(read.condition);
  if (where.length <= notationLimit) return where;
  const message = `Written out this has ${where.length} characters, and an address takes ${notationLimit}. Ask for less at once.`;
  throw new Invalid([{ field: "join", message }]);
}

/** Takes the form that builds a condition: a button that changes its parts gives the form back, the last one the cars. */
export async function buildFilter(
  club: string,
  kept: Kept,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const pressed = String(data.get("do") ?? "");
  const edit = editOf(pressed);
  const entered = enteredOf<unknown>(data);
  if (edit !== undefined || pressed === refresh) {
    const draft = draftFrom(entered);
    const typed = draftFields(edit === undefined ? draft : editDraft(draft, edit));
    return { tries: before.tries + 1, typed, errors: {} };
  }
  return takeForm({
    before,
    data,
    place: filterPath(club),
    work: async () => ({ to: registerPath(club, { ...kept, where: await addressOf(club, entered) }) }),
  });
}

type Saved = Omit<RouterInputs["filter"]["save"], "club" | "condition">;
type Condition = RouterInputs["filter"]["save"]["condition"];

/** Keeps the condition of the list under a name, and shows the list by that name. */
export async function saveFilter(
  club: string,
  condition: Condition,
  kept: Kept,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: registerPath(club),
    work: async () => {
      const { name } = await (await api()).filter.save({ ...enteredOf<Saved>(data), club, condition });
      return { to: registerPath(club, { ...kept, filter: name }) };
    },
  });
}

type Changed = Omit<RouterInputs["filter"]["change"], "club" | "id">;

/** Renames a saved filter, shares it or takes it back. */
export async function changeFilter(
  club: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: savedFiltersPath(club),
    work: async () => {
      await (await api()).filter.change({ ...enteredOf<Changed>(data), club, id });
      return { to: savedFiltersPath(club) };
    },
  });
}

/** Takes a saved filter away. */
export async function removeFilter(
  club: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: savedFiltersPath(club),
    work: async () => {
      await (await api()).filter.remove({ club, id });
      return { to: savedFiltersPath(club) };
    },
  });
}
