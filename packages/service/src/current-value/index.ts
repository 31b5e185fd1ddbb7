export { compareCurrentValues, outdatedClubs, type StaleValue } from "./read";
export {
  addCurrentValues,
  currentValuesOf,
  rebuildAllCurrentValues,
  rebuildClub,
  rebuildCurrentValues,
  rebuildOutdatedClubs,
} from "./write";
