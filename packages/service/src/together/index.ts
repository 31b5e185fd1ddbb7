export { type Together, type TogetherInput, type TogetherRow, together } from "./read";
