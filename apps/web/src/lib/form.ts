import "server-only";
import { logFault, problemsOf, refusalOf, type ToldRefusal } from "@trunnion/api";
import { type RefusalDetails, sureOf } from "@trunnion/register";
import { redirect } from "next/navigation";
import { enteredOf, typedOf } from "./form-entry";
import type { Conflict, FormState } from "./form-state";
import { api } from "./service";

/** Where to go when it is done, or what to say where one stays. */
export type FormOutcome = { readonly to: string } | { readonly done: string };

export interface TakenForm {
  /** What the form said before this try. */
  readonly before: FormState;
  readonly data: FormData;
  /** Address of the form's page, for the log. */
  readonly place: string;
  readonly work: () => Promise<FormOutcome>;
}

function conflictOf({ code, details }: ToldRefusal): { readonly conflict?: Conflict } {
  if (code !== "CHANGED_MEANWHILE") return {};
  const { version, differences } = details as RefusalDetails["CHANGED_MEANWHILE"];
  return { conflict: { version, differences } };
}

/** The doubts a form is asked about, for its next sending to let stand. */
function doubtsOf({ code, details }: ToldRefusal): { readonly sure?: string } {
  return code === "DOUBTFUL" ? { sure: sureOf((details as RefusalDetails["DOUBTFUL"]).doubts) } : {};
}

/**
 * What every server action behind a form does: the work, then on to the next page; where it is refused or cannot be
 * read, back to the form with everything that was typed and what is wrong, at its field. A bug goes to the log and on.
 */
export async function takeForm({ before, data, place, work }: TakenForm): Promise<FormState> {
  const sent = { tries: before.tries + 1, typed: typedOf(data) };
  let outcome: FormOutcome;
  try {
    outcome = await work();
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) {
      return { ...sent, errors: {}, refusal: refusal.text, ...conflictOf(refusal), ...doubtsOf(refusal) };
    }
    const problems = problemsOf(error);
    if (problems) return { ...sent, errors: problems };
    logFault(error, place);
    throw error;
  }
  if ("done" in outcome) return { ...sent, errors: {}, typed: {}, done: outcome.done };
  redirect(outcome.to);
}

/** The service, as the server actions call it. */
export type Caller = Awaited<ReturnType<typeof api>>;

/**
 * The usual action behind a form: what was entered goes to the service, then on to the page whose address `work` tells.
 * `T` is what the procedure takes; its schema checks it.
 */
export function sendForm<T>(
  sent: Pick<TakenForm, "before" | "data" | "place">,
  work: (to: Caller, entered: T) => Promise<string>,
): Promise<FormState> {
  return takeForm({
    ...sent,
    work: async () => ({ to: await work(await api(), enteredOf<T>(sent.data)) }),
  });
}
