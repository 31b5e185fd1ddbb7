import { NotationError } from "../notation-error";

/** A designation is short; nothing longer is read. */
const designationLimit = 40;

/** Throws that a text is no designation of its kind, saying why and what would be. */
export function refuseDesignation(entered: string, problem: string, understood: readonly string[]): never {
  throw new NotationError({ entered, code: "UNKNOWN_DESIGNATION", place: 0, problem, understood });
}

/** One spelling for dashes, signs of inches and of multiplication, spaces and decimal commas. */
export function tidyDesignation(entered: string, understood: readonly string[]): string {
  if (entered.length > designationLimit) {
    const problem = `a designation has at most ${designationLimit} characters, this text ${entered.length}`;
    throw new NotationError({ entered, code: "TOO_LONG", place: designationLimit, problem, understood });
  }
  const text = entered
    .replace(/[−–—‐]/g, "-")
    .replace(/[×*]/g, "x")
    .replace(/[“”″"]|''/g, "")
    .replace(/⁄/g, "/")
    .replace(/(\d),(\d)/g, "$1.$2")
    .replace(/\s+/g, " ")
    .trim();
  if (text !== "") return text;
  throw new NotationError({ entered, code: "EMPTY", place: 0, problem: "nothing is entered", understood });
}
