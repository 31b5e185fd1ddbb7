import type { AnyComputation } from "./computation";

/** Every computation of the catalogue, by topic. */
export const computations: readonly AnyComputation[] = [];
