export { mayInspect } from "./policy";
export {
  type EventPack,
  type EventRecords,
  eventPack,
  eventToInspect,
  type InspectionInstrument,
  inspectionInstruments,
  inspectionOf,
  type PackCharacteristic,
  type PackEntry,
} from "./read";
export { type TakenRecord, takeInspection, takeInspectionInput } from "./write";
