export { type KeptFile, readKeptFile } from "./read";
export { dropFile, type KeepFileInput, keepFile } from "./write";
