"use server";
import type { RouterInputs } from "@trunnion/api";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { characteristicPath, characteristicsPath, newCharacteristicPath } from "../../lib/path";
import { api } from "../../lib/service";

type Inputs = RouterInputs["characteristic"];

/** Takes the form of a new characteristic. */
export async function addCharacteristic(club: string, before: FormState, data: FormData): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: newCharacteristicPath(club),
    work: async () => {
      await (await api()).characteristic.add({ ...enteredOf<Omit<Inputs["add"], "club">>(data), club });
      return { to: characteristicsPath(club) };
    },
  });
}

/** Takes the form of a characteristic there is. */
export async function changeCharacteristic(
  club: string,
  key: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: characteristicPath(club, key),
    work: async () => {
      const entered = enteredOf<Omit<Inputs["change"], "club" | "key">>(data);
      await (await api()).characteristic.change({ ...entered, club, key });
      return { to: characteristicsPath(club) };
    },
  });
}
