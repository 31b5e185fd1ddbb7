import type { Words } from "./words";

/** What the service refuses about specification records, apart from the general refusals. */
export type SpecificationRefusals = Record<never, never>;

export const specificationWords: Words<SpecificationRefusals> = {};
