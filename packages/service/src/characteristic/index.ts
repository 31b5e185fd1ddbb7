export { bookOf } from "./read";
