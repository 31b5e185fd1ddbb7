import type { AnyComputation } from "../catalogue/computation";
import { adjusterEffectComputation } from "./effect.entry";
import { adjusterPlanComputation } from "./plan.entry";

/** Computations on the way back: which adjuster, how far. */
export const adjusterComputations = [
  adjusterPlanComputation,
  adjusterEffectComputation,
] as const satisfies readonly AnyComputation[];
