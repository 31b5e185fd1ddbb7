export { type EmbeddedServer, type OpenEmbeddedInput, openEmbedded } from "./embedded";
export { EmbeddedServerError } from "./error";
export { withLock } from "./lock";
export { endProcess, isRunning, markOf, ownMark, type ProcessMark, parseMark, waitUntil } from "./process";
export type { Strategy } from "./runner";
export { openThrowaway } from "./throwaway";
