export type { Binding, Feed, Figure, Place } from "./binding";
export {
  bindingsTouchedBy,
  type Consequence,
  changedKeys,
  consequencesOf,
  type FigureChange,
  lackingFor,
} from "./consequence";
export type { MissingInput, UsedInput } from "./gathering";
export { sayFigureChange } from "./say";
export { bindings } from "./table";
export { isFigure, WorkedFigures } from "./worked-figure";
