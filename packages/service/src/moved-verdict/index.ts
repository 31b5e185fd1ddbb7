export { type MovedInput, type MovedLine, type Moves, movesOf } from "./read";
