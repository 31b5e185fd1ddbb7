import type { AnyComputation } from "../catalogue/computation";
import { outlierComputation } from "./outlier.entry";
import { repeatabilityComputation } from "./repeatability.entry";
import { uncertaintyComputation } from "./uncertainty.entry";
import { verdictComputation } from "./verdict.entry";

/** The catalogue's computations on measuring. */
export const measurementComputations = [
  uncertaintyComputation,
  verdictComputation,
  repeatabilityComputation,
  outlierComputation,
] as const satisfies readonly AnyComputation[];
