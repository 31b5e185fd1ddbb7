export type { DoubtfulRow, RefusedRow } from "../planned-row";
export {
  optionsOf,
  plainMapping,
  type RunOptions,
  STALE,
  statusOf,
  statusWords,
  storedDoubts,
  storedProblems,
} from "./policy";
export { type BegunRun, linesOf, note, Progress, sourceFor } from "./progress";
export { type ImportRunRow, requireRun } from "./read";
export { type Open, waitForTurn, walk } from "./walk";
export {
  asOfInput,
  type ImportInput,
  type ImportReport,
  importInChunks,
  importRegister,
  requireMayImport,
} from "./write";
