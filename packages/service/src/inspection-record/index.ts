export { recordReadings } from "./write";
