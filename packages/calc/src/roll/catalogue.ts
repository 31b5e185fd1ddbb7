import type { AnyComputation } from "../catalogue/computation";
import { rollAxleComputation } from "./axle.entry";
import { rollBarsComputation } from "./bars.entry";
import { rollCorneringComputation } from "./cornering.entry";
import { rollAxleLoadsComputation } from "./longitudinal.entry";
import { rollShareComputation } from "./share.entry";
import { rollTargetComputation } from "./target.entry";

/** Computations on roll and load transfer. */
export const rollComputations = [
  rollAxleComputation,
  rollCorneringComputation,
  rollBarsComputation,
  rollShareComputation,
  rollTargetComputation,
  rollAxleLoadsComputation,
] as const satisfies readonly AnyComputation[];
