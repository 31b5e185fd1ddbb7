import type { Words } from "./words";

/** What the service refuses about import records, apart from the general refusals. */
export type ImportRefusals = Record<never, never>;

export const importWords: Words<ImportRefusals> = {};
