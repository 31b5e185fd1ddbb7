export {
  type EventEntry,
  type EventForm,
  type EventPage,
  entriesOf,
  eventForm,
  findEvent,
  listEvents,
} from "./read";
export {
  type AddEntryInput,
  type AddEventInput,
  addEntries,
  addEvent,
  changeEvent,
  changeEventInput,
  planEvent,
  planEventInput,
  putInOrder,
} from "./write";
