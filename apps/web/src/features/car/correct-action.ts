"use server";
import type { RouterInputs } from "@trunnion/api";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { correctCarPath, editCarPath } from "../../lib/path";
import { api } from "../../lib/service";

type Entered = Omit<RouterInputs["car"]["correct"], "club" | "car">;

/** Takes the form that corrects a car's facts. */
export async function correctCar(
  club: string,
  car: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: correctCarPath(club, car),
    work: async () => {
      await (await api()).car.correct({ ...enteredOf<Entered>(data), club, car });
      return { to: editCarPath(club, car, "facts") };
    },
  });
}
