import type { AnyComputation } from "../catalogue/computation";
import { axesComputation } from "./axes.entry";
import { setBackComputation, thrustComputation } from "./axle.entry";
import { ackermannComputation, castorSwingComputation } from "./steer.entry";
import { camberAtRimComputation, toeAtRimComputation, toeFromRimComputation } from "./toe.entry";

/** Computations on wheel alignment. */
export const alignmentComputations = [
  toeAtRimComputation,
  toeFromRimComputation,
  camberAtRimComputation,
  thrustComputation,
  setBackComputation,
  ackermannComputation,
  castorSwingComputation,
  axesComputation,
] as const satisfies readonly AnyComputation[];
