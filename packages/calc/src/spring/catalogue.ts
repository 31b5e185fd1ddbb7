import type { AnyComputation } from "../catalogue/computation";
import { springCoilComputation } from "./coil.entry";
import { springCombinationComputation } from "./combination.entry";
import { springDampingComputation } from "./damping.entry";
import { springHeightComputation } from "./height.entry";
import { springLeafComputation } from "./leaf.entry";
import { springRideComputation } from "./ride.entry";
import { springTorsionBarComputation } from "./torsion-bar.entry";

/** Computations on springs, dampers and ride. */
export const springComputations = [
  springCoilComputation,
  springCombinationComputation,
  springRideComputation,
  springHeightComputation,
  springDampingComputation,
  springLeafComputation,
  springTorsionBarComputation,
] as const satisfies readonly AnyComputation[];
