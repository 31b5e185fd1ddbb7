"use server";
import type { RouterInputs } from "@trunnion/api";
import { sendForm } from "../../../lib/form";
import type { FormState } from "../../../lib/form-state";
import { editCarPath, ownContactPath } from "../../../lib/path";

type Inputs = RouterInputs["keeper"];
type Entered<K extends keyof Inputs> = Omit<NonNullable<Inputs[K]>, "club" | "car" | "id" | "keeper">;

/** Takes the form over a keeping: a new one without an id. */
export async function saveKeepership(
  club: string,
  car: string,
  id: string | undefined,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: editCarPath(club, car) };
  return sendForm<unknown>(sent, async ({ keeper }, entered) => {
    if (id === undefined)
      await keeper.add({ ...(entered as Omit<Inputs["add"], "club" | "car">), club, car });
    else await keeper.correct({ ...(entered as Entered<"correct">), club, car, id });
    return editCarPath(club, car, "keeper");
  });
}

export async function removeKeepership(
  club: string,
  car: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: editCarPath(club, car) };
  return sendForm<Entered<"remove">>(sent, async (to, entered) => {
    await to.keeper.remove({ ...entered, club, car, id });
    return editCarPath(club, car, "keeper");
  });
}

/** Takes the form over a keeper's particulars. */
export async function savePerson(
  club: string,
  car: string,
  keeper: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: editCarPath(club, car) };
  return sendForm<Entered<"correctPerson">>(sent, async (to, entered) => {
    await to.keeper.correctPerson({ ...entered, club, car, keeper });
    return editCarPath(club, car, "keeper");
  });
}

/** Takes the form that erases a keeper's personal data. */
export async function erasePerson(
  club: string,
  car: string,
  keeper: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: editCarPath(club, car) };
  return sendForm<{ readonly reason?: string }>(sent, async (to, { reason }) => {
    await to.keeper.erase({ club, keeper, ...(reason === undefined ? {} : { reason }) });
    return editCarPath(club, car, "keeper");
  });
}

/** Takes the form over one's own contact data. */
export async function saveOwnContact(
  club: string,
  keeper: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  const sent = { before, data, place: ownContactPath(club) };
  return sendForm<Entered<"correctOwn">>(sent, async (to, entered) => {
    await to.keeper.correctOwn({ ...entered, club, keeper });
    return ownContactPath(club);
  });
}
