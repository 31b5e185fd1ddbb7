import type { Words } from "./words";

/** What the service refuses about filter records, apart from the general refusals. */
export type FilterRefusals = Record<never, never>;

export const filterWords: Words<FilterRefusals> = {};
