"use server";
import type { RouterInputs } from "@trunnion/api";
import { revalidatePath } from "next/cache";
import { sendForm, takeForm } from "../../lib/form";
import { enteredOf } from "../../lib/form-entry";
import type { FormState } from "../../lib/form-state";
import { changePartPath, newPartPath, partPath, partsPath } from "../../lib/path";
import { api } from "../../lib/service";

type Inputs = RouterInputs["part"];

/** Takes the form of a new part; then on to its page. */
export async function addPart(club: string, before: FormState, data: FormData): Promise<FormState> {
  return sendForm<Omit<Inputs["add"], "club">>(
    { before, data, place: newPartPath(club) },
    async (to, entered) => partPath(club, await to.part.add({ ...entered, club })),
  );
}

/** Takes the form of a part there is. */
export async function changePart(
  club: string,
  part: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return sendForm<Omit<Inputs["change"], "club" | "part">>(
    { before, data, place: changePartPath(club, part) },
    async (to, entered) => {
      await to.part.change({ ...entered, club, part });
      return partPath(club, part);
    },
  );
}

/** Takes a part off the list; then back to the list. */
export async function withdrawPart(
  club: string,
  part: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return sendForm<{ reason?: string }>(
    { before, data, place: partPath(club, part) },
    async (to, { reason = "" }) => {
      await to.part.withdraw({ club, part, reason });
      return partsPath(club);
    },
  );
}

/** Takes a dated note about a part. */
export async function notePart(
  club: string,
  part: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return takeForm({
    before,
    data,
    place: partPath(club, part),
    work: async () => {
      const entered = enteredOf<Omit<Inputs["note"], "club" | "part">>(data);
      await (await api()).part.note({ ...entered, club, part });
      revalidatePath(partPath(club, part));
      return { done: "Noted; it stands with the others above." };
    },
  });
}

/** Takes a note back. */
export async function withdrawNote(club: string, part: string, note: string): Promise<void> {
  await (await api()).part.withdrawNote({ club, part, note });
  revalidatePath(partPath(club, part));
}
