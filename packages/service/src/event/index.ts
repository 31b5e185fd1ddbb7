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
  changeEntry,
  changeEntryInput,
  changeEvent,
  changeEventInput,
  enterCar,
  enterCarInput,
  planEvent,
  planEventInput,
} from "./write";
