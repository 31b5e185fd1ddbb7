"use server";
import type { RouterInputs } from "@trunnion/api";
import { revalidatePath } from "next/cache";
import { takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { extractSettingsPath } from "../../lib/path";
import { api } from "../../lib/service";

type Entered = Omit<RouterInputs["publicExtract"]["choose"], "club">;

/** Takes the form that chooses what everybody may see. */
export async function chooseExtract(club: string, before: FormState, data: FormData): Promise<FormState> {
  const place = extractSettingsPath(club);
  return takeForm({
    before,
    data,
    place,
    work: async () => {
      await (await api()).publicExtract.choose({ ...enteredOf<Entered>(data), club });
      revalidatePath(place);
      return { done: "Saved." };
    },
  });
}
