export { type EventEntryLine, type EventView, eventPage } from "./read";
