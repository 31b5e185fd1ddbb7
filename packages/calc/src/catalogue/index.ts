export { computations } from "./all";
export * from "./computation";
export * from "./list";
export * from "./run";
