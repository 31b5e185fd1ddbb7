export { mayInspect } from "./policy";
export {
  type EventPack,
  type EventRecords,
  eventPack,
  eventToInspect,
  inspectionOf,
  type PackCharacteristic,
  type PackEntry,
} from "./read";
export { type TakenRecord, takeInspection, takeInspectionInput } from "./write";
