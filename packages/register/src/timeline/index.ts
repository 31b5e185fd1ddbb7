export * from "./belief";
export * from "./event";
export * from "./rewind";
export * from "./stands";
