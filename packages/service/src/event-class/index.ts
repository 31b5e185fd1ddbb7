export {
  type ClassStanding,
  carViewOf,
  classesOf,
  classStandings,
  type RuledClass,
  sayOptions,
} from "./read";
