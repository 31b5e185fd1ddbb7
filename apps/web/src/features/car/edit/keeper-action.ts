"use server";
import type { RouterInputs } from "@trunnion/api";
import { takeForm } from "../../../lib/form";
import { enteredOf } from "../../../lib/form-entry";
import type { FormState } from "../../../lib/form-state";
import { editCarPath, ownContactPath } from "../../../lib/path";
import { api } from "../../../lib/service";

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
  return takeForm({
    before,
    data,
    place: editCarPath(club, car),
    work: async () => {
      const { keeper } = await api();
      if (id === undefined) {
        await keeper.add({ ...enteredOf<Omit<Inputs["add"], "club" | "car">>(data), club, car });
      } else await keeper.correct({ ...enteredOf<Entered<"correct">>(data), club, car, id });
      return { to: editCarPath(club, car, "keeper") };
    },
  });
}

export async function removeKeepership(
  club: string,
  car: string,
  id: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: editCarPath(club, car),
    work: async () => {
      await (await api()).keeper.remove({ ...enteredOf<Entered<"remove">>(data), club, car, id });
      return { to: editCarPath(club, car, "keeper") };
    },
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
  return takeForm({
    before,
    data,
    place: editCarPath(club, car),
    work: async () => {
      const entered = enteredOf<Entered<"correctPerson">>(data);
      await (await api()).keeper.correctPerson({ ...entered, club, car, keeper });
      return { to: editCarPath(club, car, "keeper") };
    },
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
  return takeForm({
    before,
    data,
    place: editCarPath(club, car),
    work: async () => {
      const { reason } = enteredOf<{ readonly reason?: string }>(data);
      await (await api()).keeper.erase({ club, keeper, ...(reason === undefined ? {} : { reason }) });
      return { to: editCarPath(club, car, "keeper") };
    },
  });
}

/** Takes the form over one's own contact data. */
export async function saveOwnContact(
  club: string,
  keeper: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: ownContactPath(club),
    work: async () => {
      await (await api()).keeper.correctOwn({ ...enteredOf<Entered<"correctOwn">>(data), club, keeper });
      return { to: ownContactPath(club) };
    },
  });
}
