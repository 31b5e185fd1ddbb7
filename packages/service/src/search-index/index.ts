export { nearWords, searchHolds } from "./policy";
export { type Correction, correctionsOf, searchedIn, staleCars } from "./read";
export type { Searched } from "./said";
export { refreshSearchIndex, refreshWholeSearchIndex } from "./write";
