export type { Binding, Feed, Figure, Place } from "./binding";
export {
  bindingsTouchedBy,
  type Consequence,
  changedKeys,
  consequencesOf,
  type FigureChange,
  lackingFor,
} from "./consequence";
export { sayFigureChange } from "./say";
export type { MissingInput, UsedInput } from "./solve";
export { bindings } from "./table";
