export { nearWords, readWords, wordsHold } from "./policy";
export { type Correction, correctionsOf } from "./read";
export { refreshSearchIndex, refreshWholeSearchIndex } from "./write";
