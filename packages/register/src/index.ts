export * from "./characteristic/characteristic";
export * from "./check/check";
export * from "./condition/condition";
export * from "./deviation/deviation";
export * from "./sheet/sheet-model";
export * from "./specification/specification";
export * from "./state/state";
export * from "./value/value";
