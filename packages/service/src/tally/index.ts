export {
  type BlockedAbout,
  blockSql,
  blocksOf,
  builtMonth,
  type Counted,
  carsSql,
  countedSql,
  facetBlocks,
  hasSql,
  keptBlocks,
  keptSql,
  noneSql,
  oneSql,
  placesSql,
  type TallyAbout,
} from "./policy";
export { compareTallies, type WrongTally } from "./read";
export { forgetTallies, refreshTallies } from "./write";
