export { carriedFindings } from "./read";
