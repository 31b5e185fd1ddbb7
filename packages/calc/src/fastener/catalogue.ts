import type { AnyComputation } from "../catalogue/computation";
import { engagementComputation } from "./engagement.entry";
import { jointComputation } from "./joint.entry";
import { boltLengthComputation } from "./length.entry";
import { spacerStackComputation } from "./spacer-stack.entry";
import { boltStrengthComputation } from "./strength.entry";
import { lookAlikeComputation, threadPairComputation } from "./thread-pair.entry";
import { boltPreloadComputation, boltTorqueComputation } from "./torque.entry";

/** The catalogue's computations on fasteners. */
export const fastenerComputations = [
  boltStrengthComputation,
  boltPreloadComputation,
  boltTorqueComputation,
  jointComputation,
  engagementComputation,
  spacerStackComputation,
  threadPairComputation,
  lookAlikeComputation,
  boltLengthComputation,
] as const satisfies readonly AnyComputation[];
