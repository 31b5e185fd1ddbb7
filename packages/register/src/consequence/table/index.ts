import type { Binding } from "../binding";
import { barBindings } from "./bar";
import { brakeBindings } from "./brake";
import { linkBindings } from "./link";
import { linkageBindings } from "./linkage";
import { rollBindings } from "./roll";
import { springBindings } from "./spring";
import { tyreBindings } from "./tyre";

/** Everything the calculator can say of a car by its characteristics, in the order it is told. */
export const bindings: readonly Binding[] = [
  ...barBindings,
  ...springBindings,
  ...rollBindings,
  ...linkageBindings,
  ...linkBindings,
  ...tyreBindings,
  ...brakeBindings,
];
