export * from "./compare-cars";
