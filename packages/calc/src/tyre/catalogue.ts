import type { AnyComputation } from "../catalogue/computation";
import { tyreChangeComputation } from "./change.entry";
import { tyreDateComputation } from "./date.entry";
import { tyreGearingComputation } from "./gearing.entry";
import { tyreLoadComputation } from "./load.entry";
import { tyreRimComputation } from "./rim.entry";
import { tyreSizeComputation } from "./size.entry";
import { tyreSpeedometerComputation } from "./speedometer.entry";

/** Computations on tyres, gearing and the speedometer. */
export const tyreComputations = [
  tyreSizeComputation,
  tyreChangeComputation,
  tyreSpeedometerComputation,
  tyreGearingComputation,
  tyreLoadComputation,
  tyreRimComputation,
  tyreDateComputation,
] as const satisfies readonly AnyComputation[];
