import type { RefusalText } from "@trunnion/register";
import { evidenceFormPath } from "../../lib/path";

/** A photo that a device keeps until the club has it. */
export interface KeptFile {
  readonly club: string;
  /** Reference of what it supports. */
  readonly for: string;
  /** Key of the one characteristic that it shows; empty for all. */
  readonly about: string;
  readonly name: string;
  readonly content: Blob;
}

/** What came of a try; a fault of the line or the server may pass, a refusal does not. */
export type SentKept =
  | { readonly at: "sent"; readonly evidence: string }
  | { readonly at: "refused"; readonly text: RefusalText }
  | { readonly at: "noSignal" }
  | { readonly at: "signedOut" };

/** Longest that one photo may take, milliseconds: 40 MB over a slow line, and an end where the line carries nothing. */
const PATIENCE = 180_000;

interface Answer {
  readonly added?: readonly { readonly evidence: string }[];
  readonly refusal?: RefusalText;
}

/** Sends one photo. Sent again because no answer came, it is the same piece of evidence by its content. */
export async function sendKept({ club, about, name, content, ...file }: KeptFile): Promise<SentKept> {
  const form = new FormData();
  form.set("for", file.for);
  form.set("about", about);
  form.set("files", content, name);
  try {
    const answer = await fetch(evidenceFormPath(club), {
      method: "POST",
      body: form,
      headers: { accept: "application/json" },
      signal: AbortSignal.timeout(PATIENCE),
    });
    if (answer.status === 401) return { at: "signedOut" };
    if (answer.status >= 500) return { at: "noSignal" };
    const { added, refusal } = (await answer.json()) as Answer;
    const [piece] = added ?? [];
    if (piece) return { at: "sent", evidence: piece.evidence };
    const what = `The club's server answered ${answer.status}.`;
    return { at: "refused", text: refusal ?? { what, remedy: "The photo is still kept on this device." } };
  } catch {
    return { at: "noSignal" };
  }
}
