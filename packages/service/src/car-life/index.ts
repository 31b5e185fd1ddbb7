export type { CarLife, LifeModification, LifeNote, LifeNumber, LifeSheet, LifeStatus } from "./policy";
export { knownTime } from "./policy";
export { type LoadedLife, loadLife } from "./read";
