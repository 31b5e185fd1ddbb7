import "server-only";
import type { RefusalText } from "@trunnion/register";
import { cookies } from "next/headers";

/** What was typed into the form that adds evidence; files cannot be shown again. */
export interface TypedEvidence {
  readonly caption: string;
  readonly taken: string;
  readonly locus: string;
  readonly keepLocation: boolean;
}

/** What came of a form sent without a script: kept by the browser for the one page it is sent on to. */
export interface Outcome {
  readonly text: RefusalText;
  readonly typed: TypedEvidence;
}

const NAME = "trunnion-evidence";
/** Seconds. */
const LIFE = 120;

/** The cookie that carries an outcome, and the word in the address that it belongs to. */
export function outcomeCookie(outcome: Outcome): { readonly id: string; readonly cookie: string } {
  const id = crypto.randomUUID();
  const value = Buffer.from(JSON.stringify({ id, ...outcome })).toString("base64url");
  return { id, cookie: `${NAME}=${value}; Path=/club; Max-Age=${LIFE}; HttpOnly; SameSite=Lax` };
}

const withoutOutcome: Outcome = {
  text: {
    what: "The files were not taken.",
    remedy:
      "Why cannot be shown: this browser keeps no cookies of this page, or it is long ago. Send them again.",
  },
  typed: { caption: "", taken: "", locus: "", keepLocation: false },
};

/** What came of the form that led to this page; nothing where none did. */
export async function readOutcome(id: string | undefined): Promise<Outcome | undefined> {
  if (id === undefined) return undefined;
  try {
    const kept = (await cookies()).get(NAME)?.value ?? "";
    const read = JSON.parse(Buffer.from(kept, "base64url").toString()) as Outcome & { readonly id: string };
    return read.id === id ? read : withoutOutcome;
  } catch {
    return withoutOutcome;
  }
}
