export { type CarConsequences, carConsequence, carConsequences, type WorkedConsequence } from "./read";
