export { type CarPage, carPage } from "./read";
