export { sayAction } from "./action";
export * from "./difference";
