import type { AnyComputation } from "../catalogue/computation";
import {
  doubleWishboneComputation,
  semiTrailingComputation,
  strutComputation,
  swingAxleComputation,
} from "./corner.entry";
import { liveAxleComputation } from "./live-axle.entry";
import { axleRollComputation, linkageAckermannComputation } from "./roll.entry";

/** Computations on suspension linkages from their hardpoints. */
export const linkageComputations = [
  doubleWishboneComputation,
  strutComputation,
  swingAxleComputation,
  semiTrailingComputation,
  liveAxleComputation,
  axleRollComputation,
  linkageAckermannComputation,
] as const satisfies readonly AnyComputation[];
