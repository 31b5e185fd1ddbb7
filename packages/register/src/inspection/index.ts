export * from "./inspection";
export * from "./judge-reading";
export * from "./schema";
export * from "./standing";
