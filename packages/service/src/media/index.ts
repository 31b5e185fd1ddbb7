export { type GivenFile, type PreparedFile, prepareFile } from "./prepare";
export { type ThumbnailName, thumbnail, variantOf } from "./thumbnail";
export { type QuarterTurns, quarterTurnsOf } from "./turn";
