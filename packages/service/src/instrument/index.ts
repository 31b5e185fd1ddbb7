export { type InstrumentDimension, instrumentDimensions } from "./policy";
export { type InstrumentLine, listInstruments } from "./read";
export { type AddInstrumentInput, addInstrument, addInstrumentInput } from "./write";
