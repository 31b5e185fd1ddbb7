export { EXTRACT_CHARACTERISTICS, type PublicExtractInput, publicExtractInput } from "./policy";
export { type ExtractChoice, type ExtractListInput, extractCar, extractList, extractSettings } from "./read";
export { choosePublicExtract } from "./write";
