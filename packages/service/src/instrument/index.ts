export { type InstrumentDimension, type InstrumentTexts, instrumentDimensions } from "./policy";
export {
  type InstrumentLine,
  type InstrumentPage,
  type InstrumentSheet,
  type InstrumentsPage,
  instrumentPage,
  instrumentsPage,
  listInstruments,
} from "./read";
export {
  type AddInstrumentInput,
  addInstrument,
  addInstrumentInput,
  type ChangeInstrumentInput,
  changeInstrument,
  changeInstrumentInput,
  type RetireInstrumentInput,
  restoreInstrument,
  retireInstrument,
  retireInstrumentInput,
} from "./write";
