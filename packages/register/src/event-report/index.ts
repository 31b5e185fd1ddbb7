export * from "./report-line";
export * from "./report-model";
