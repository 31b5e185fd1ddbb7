import { adjusterComputations } from "../adjuster/catalogue";
import { alignmentComputations } from "../alignment/catalogue";
import { barComputations } from "../bar/catalogue";
import { brakeComputations } from "../brake/catalogue";
import { fastenerComputations } from "../fastener/catalogue";
import { linkageComputations } from "../linkage/catalogue";
import { measurementComputations } from "../measurement/catalogue";
import { noiseComputations } from "../noise/catalogue";
import { rollComputations } from "../roll/catalogue";
import { springComputations } from "../spring/catalogue";
import { tyreComputations } from "../tyre/catalogue";
import { weightComputations } from "../weight/catalogue";
import type { AnyComputation } from "./computation";

/** Every computation of the catalogue, topic by topic; one line each, so that topics are added without a clash. */
export const computations: readonly AnyComputation[] = [
  // one topic a line
  ...alignmentComputations,
  ...linkageComputations,
  ...adjusterComputations,
  ...barComputations,
  ...springComputations,
  ...measurementComputations,
  ...rollComputations,
  ...tyreComputations,
  ...brakeComputations,
  ...noiseComputations,
  ...fastenerComputations,
  ...weightComputations,
];
