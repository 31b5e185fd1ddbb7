import type { AnyComputation } from "../catalogue/computation";
import { noiseBackgroundComputation } from "./background.entry";
import { noiseDistanceComputation } from "./distance.entry";
import { noiseMarginComputation } from "./margin.entry";
import { noiseSumComputation } from "./sum.entry";
import { noiseTestSpeedComputation } from "./test-speed.entry";

/** Computations on noise. */
export const noiseComputations = [
  noiseDistanceComputation,
  noiseSumComputation,
  noiseBackgroundComputation,
  noiseMarginComputation,
  noiseTestSpeedComputation,
] as const satisfies readonly AnyComputation[];
