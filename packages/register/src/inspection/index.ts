export * from "./inspection";
export * from "./schema";
export * from "./standing";
