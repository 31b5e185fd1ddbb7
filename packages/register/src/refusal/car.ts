import type { Words } from "./words";

/** What the service refuses about car records, apart from the general refusals. */
export type CarRefusals = Record<never, never>;

export const carWords: Words<CarRefusals> = {};
