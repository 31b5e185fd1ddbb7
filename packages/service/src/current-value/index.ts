export { compareCurrentValues, outdatedClubs, type StaleValue } from "./read";
export {
  addCurrentValues,
  currentValuesOf,
  type RebuildProgress,
  rebuildAllCurrentValues,
  rebuildClub,
  rebuildCurrentValues,
  rebuildOutdatedClubs,
} from "./write";
