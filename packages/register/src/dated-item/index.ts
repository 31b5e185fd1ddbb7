export * from "./due";
export * from "./icalendar";
export * from "./kind";
