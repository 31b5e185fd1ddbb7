import type { AnyComputation } from "../catalogue/computation";
import { ballastComputation } from "./ballast.entry";
import { ballastPlaceComputation } from "./ballast-corner.entry";
import { centreOfGravityComputation } from "./centre.entry";
import { cornerWeightComputation } from "./corner.entry";
import { crossWeightComputation } from "./cross.entry";

/** The catalogue's computations on weights. */
export const weightComputations = [
  cornerWeightComputation,
  crossWeightComputation,
  centreOfGravityComputation,
  ballastComputation,
  ballastPlaceComputation,
] as const satisfies readonly AnyComputation[];
