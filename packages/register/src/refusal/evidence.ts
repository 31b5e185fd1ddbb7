import type { Words } from "./words";

/** What the service refuses about evidence records, apart from the general refusals. */
export type EvidenceRefusals = Record<never, never>;

export const evidenceWords: Words<EvidenceRefusals> = {};
