export { computations } from "./all";
export * from "./computation";
export * from "./list";
export {
  type Answers,
  answerComputation,
  inputOf,
  printStep,
  type RunOutput,
  type RunResult,
  type RunStep,
  runComputation,
} from "./run";
