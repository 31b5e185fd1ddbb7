import "server-only";
import { type EvidenceRequest, requestOf } from "@trunnion/api";
import { answeredPlainly } from "../../lib/file-answer";
import { service } from "../../lib/service";
import { store } from "../../lib/store";

/** Answers with a file of a club, or in plain words why not. */
export function answerFile(
  request: Request,
  club: string,
  work: (asked: EvidenceRequest) => Promise<Response>,
): Promise<Response> {
  return answeredPlainly("evidence file", async () =>
    work({ request: await requestOf(service(), request.headers), store: await store(), club }),
  );
}

/** For files whose address never shows anything else: kept by the reader's own browser, and by nothing between. */
export const forEver = "private, max-age=31536000, immutable";

/** A file is looked at and runs nothing, whatever is in it. */
export const inert = {
  "x-content-type-options": "nosniff",
  "content-security-policy": "default-src 'none'; style-src 'unsafe-inline'; sandbox",
} as const;
