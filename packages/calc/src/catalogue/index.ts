export * from "./computation";
