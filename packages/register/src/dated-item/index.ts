export * from "./kind";
