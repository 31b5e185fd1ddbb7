import "server-only";
import type { RefusalText } from "@trunnion/register";
import { cookies } from "next/headers";

const NAME = "trunnion-import";
/** Seconds. */
const LIFE = 120;

/** Why a file was not taken, kept by the browser for the one page it is sent back to; and the word in the address that it belongs to. */
export function outcomeCookie(text: RefusalText): { readonly id: string; readonly cookie: string } {
  const id = crypto.randomUUID();
  const value = Buffer.from(JSON.stringify({ id, text })).toString("base64url").slice(0, 3_800);
  return { id, cookie: `${NAME}=${value}; Path=/club; Max-Age=${LIFE}; HttpOnly; SameSite=Lax` };
}

const forgotten: RefusalText = {
  what: "The file was not taken.",
  remedy:
    "Why cannot be shown: this browser keeps no cookies of this page, or it is long ago. Send it again.",
};

/** Why the file that led to this page was not taken; nothing where none did. */
export async function readOutcome(id: string | undefined): Promise<RefusalText | undefined> {
  if (id === undefined) return undefined;
  try {
    const kept = (await cookies()).get(NAME)?.value ?? "";
    const read = JSON.parse(Buffer.from(kept, "base64url").toString()) as {
      readonly id: string;
      readonly text: RefusalText;
    };
    return read.id === id ? read.text : forgotten;
  } catch {
    return forgotten;
  }
}
