export { type Association, association, type Fourfold, holdsUp, smallExpected } from "./association";
export { type Bins, type BinsInput, binLimit, bins, niceStep } from "./bin";
export { quantileOf } from "./quantile";
