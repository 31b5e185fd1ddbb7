import "server-only";
import { type EvidenceRequest, logFault, refusalOf, requestOf } from "@trunnion/api";
import type { RefusalText } from "@trunnion/register";
import { service } from "../../lib/service";
import { store } from "../../lib/store";

const fault: RefusalText = {
  what: "The file could not be read.",
  remedy: "Try again; if it stays, tell whoever runs this.",
};

function told({ what, remedy }: RefusalText, status: number): Response {
  const headers = { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" };
  return new Response(`${what}\n${remedy}\n`, { status, headers });
}

/** Answers with a file of a club, or in plain words why not. */
export async function answerFile(
  request: Request,
  club: string,
  work: (asked: EvidenceRequest) => Promise<Response>,
): Promise<Response> {
  try {
    return await work({ request: await requestOf(service(), request.headers), store: await store(), club });
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return told(refusal.text, refusal.status);
    logFault(error, "evidence file");
    return told(fault, 500);
  }
}

/** For files whose address never shows anything else: kept by the reader's own browser, and by nothing between. */
export const forEver = "private, max-age=31536000, immutable";

/** A file is looked at and runs nothing, whatever is in it. */
export const inert = {
  "x-content-type-options": "nosniff",
  "content-security-policy": "default-src 'none'; style-src 'unsafe-inline'; sandbox",
} as const;
