export * from "./belief";
export * from "./closing";
export * from "./event";
export * from "./rewind";
export * from "./rewind-rows";
export * from "./stands";
