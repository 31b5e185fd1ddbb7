export { type DecideInput, decideInput, decideSubmission } from "./write";
