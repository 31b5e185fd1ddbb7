"use server";
import type { RouterInputs } from "@trunnion/api";
import { sendForm } from "../../lib/form";
import type { FormState } from "../../lib/form-state";
import { instrumentPath } from "../../lib/path";

type Inputs = RouterInputs["instrument"];

/** Takes the form of an instrument there is. */
export async function changeInstrument(
  club: string,
  instrument: string,
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return sendForm<Omit<Inputs["change"], "club" | "instrument">>(
    { before, data, place: instrumentPath(club, instrument) },
    async (to, entered) => {
      await to.instrument.change({ ...entered, club, instrument });
      return instrumentPath(club, instrument, { saved: "yes" });
    },
  );
}

/** Takes an instrument out of use, or puts it back. */
export async function setRetired(
  {
    club,
    instrument,
    retire,
  }: { readonly club: string; readonly instrument: string; readonly retire: boolean },
  before: FormState,
  data: FormData,
): Promise<FormState> {
  return sendForm<Omit<Inputs["retire"], "club" | "instrument">>(
    { before, data, place: instrumentPath(club, instrument) },
    async (to, entered) => {
      const sent = { ...entered, club, instrument };
      await (retire ? to.instrument.retire(sent) : to.instrument.restore(sent));
      return instrumentPath(club, instrument);
    },
  );
}
