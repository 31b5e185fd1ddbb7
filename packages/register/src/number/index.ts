export * from "./coverage";
export * from "./find";
export * from "./finding";
export * from "./say";
