import type { AnyComputation } from "../catalogue/computation";
import { barMotionRatioComputation } from "./motion.entry";
import { barRateComputation } from "./rate.entry";
import { barRatioComputation } from "./ratio.entry";
import { barDiameterComputation } from "./size.entry";
import { barStressComputation } from "./stress.entry";

/** Computations on anti-roll bars. */
export const barComputations = [
  barRateComputation,
  barRatioComputation,
  barStressComputation,
  barDiameterComputation,
  barMotionRatioComputation,
] as const satisfies readonly AnyComputation[];
