export { importsDone, inTurn } from "./queue";
export { carryOn, type JobInput, lookThrough } from "./write";
