export { type CarEntryLine, type CarEvents, carEvents } from "./read";
