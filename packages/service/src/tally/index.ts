export { builtMonth, type Counted, carsSql, countedSql, keptSql } from "./policy";
export { compareTallies, type WrongTally } from "./read";
export { forgetTallies, refreshTallies } from "./write";
