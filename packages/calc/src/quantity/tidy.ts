import { NotationError } from "./notation-error";

/** Longest entry that is read. */
export const entryLimit = 80;

/**
 * One character for all kinds of primes, dashes, strokes, degree signs and spaces. The length stays, so that places
 * in the tidied text are places in the entry; only space at the end goes.
 * @throws NotationError for an entry that is empty or longer than {@link entryLimit}
 */
export function tidy(entered: string, understood: readonly string[]): string {
  if (entered.length > entryLimit) {
    const problem = `an entry has at most ${entryLimit} characters, this one ${entered.length}`;
    throw new NotationError({ entered, code: "TOO_LONG", place: entryLimit, problem, understood });
  }
  const text = entered
    .replace(/[‘’′‵`´]/g, "'")
    .replace(/[“”″]/g, '"')
    .replace(/[º˚]/g, "°")
    .replace(/[‐‑−–—]/g, "-")
    .replace(/[⁄∕]/g, "/")
    .replace(/\s/g, " ")
    .trimEnd();
  if (text.trim() !== "") return text;
  throw new NotationError({ entered, code: "EMPTY", place: 0, problem: "nothing is entered", understood });
}
