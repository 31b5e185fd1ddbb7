import type { Words } from "./words";

/** What the service refuses about archive records, apart from the general refusals. */
export type ArchiveRefusals = Record<never, never>;

export const archiveWords: Words<ArchiveRefusals> = {};
