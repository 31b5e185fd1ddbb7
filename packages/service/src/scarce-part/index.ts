export { type ScarcePart, type ScarceParts, scarceParts } from "./read";
