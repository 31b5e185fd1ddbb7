export { compoundsOf } from "./compound";
export * from "./designation/index";
export { type Dimension, dimensionNames, dimensions, type MeasuredDimension, siUnits } from "./dimension";
export { examplesOf } from "./explain";
export { NotationError, type NotationErrorCode, notationErrorCodes } from "./notation-error";
export { entryLimit, type ParseOptions, parseQuantity, type Quantity } from "./parse";
export { type PrintOptions, printQuantity } from "./print";
export { defaultUnit, findUnit, fromSi, toSi, type Unit, unitNamed, unitsOf } from "./unit";
