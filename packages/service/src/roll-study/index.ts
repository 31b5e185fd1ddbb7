export { type RollStudy, rollStudy } from "./read";
