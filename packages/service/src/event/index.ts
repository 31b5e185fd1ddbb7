export { type EventEntry, type EventPage, entriesOf, findEvent, listEvents } from "./read";
export { type AddEntryInput, type AddEventInput, addEntries, addEvent } from "./write";
