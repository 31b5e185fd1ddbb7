export * from "./extract-car";
export * from "./json-ld";
export * from "./part";
