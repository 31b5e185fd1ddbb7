export * from "./ackermann";
export * from "./axis";
export * from "./axle-line";
export * from "./rim";
export * from "./swing";
export type { Side, Vector } from "./vector";
