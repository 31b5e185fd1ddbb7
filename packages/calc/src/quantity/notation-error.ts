/** What can be wrong with an entry in trade notation. Closed: the interface words each. */
export const notationErrorCodes = [
  "EMPTY",
  "TOO_LONG",
  "NO_NUMBER",
  "BAD_NUMBER",
  "BAD_FRACTION",
  "DECIMAL_COMMA",
  "THOUSANDS_SEPARATOR",
  "NO_UNIT",
  "UNKNOWN_UNIT",
  "WRONG_KIND",
  "BAD_COMPOUND",
  "TWO_SIGNS",
  "RANGE_OR_LIMITS",
  "OUT_OF_RANGE",
  "RIM_NEEDED",
  "DIRECTION_NEEDED",
  "SHARE_NEEDED",
  "UNKNOWN_DESIGNATION",
] as const;
export type NotationErrorCode = (typeof notationErrorCodes)[number];

/** What a {@link NotationError} is made from. */
export interface NotationErrorDetails {
  readonly entered: string;
  readonly code: NotationErrorCode;
  /** Where in the entry, counted from 0; the length of the entry when something is missing at its end. */
  readonly place: number;
  /** What is wrong, as a sentence without the entry and without the examples. */
  readonly problem: string;
  /** Entries that would have been understood. */
  readonly understood: readonly string[];
}

/**
 * An entry that cannot be read. The message quotes the entry, says what is wrong with it and what would have been
 * understood; the parts are kept apart for an interface that words or draws them itself.
 */
export class NotationError extends Error {
  readonly entered: string;
  readonly code: NotationErrorCode;
  readonly place: number;
  readonly problem: string;
  readonly understood: readonly string[];

  constructor({ entered, code, place, problem, understood }: NotationErrorDetails) {
    const quoted = entered.length > 80 ? `${entered.slice(0, 80)}…` : entered;
    const hint = understood.length > 0 ? `${hintWords(problem)} ${understood.join(" or ")}` : "";
    super(`"${quoted}"${problem.startsWith("is ") ? "" : ":"} ${problem}${hint}`);
    this.name = "NotationError";
    this.entered = entered;
    this.code = code;
    this.place = place;
    this.problem = problem;
    this.understood = understood;
  }

  /** The same about the entry as it was typed, where a tidied copy was read; with examples, where there were none. */
  about(entered: string, understood: readonly string[] = []): NotationError {
    return new NotationError({
      ...this,
      entered,
      understood: this.understood.length > 0 ? this.understood : understood,
    });
  }
}

function hintWords(problem: string): string {
  if (problem.endsWith("?")) return " Understood would be";
  return problem.endsWith("is wanted") ? ", e.g." : "; understood would be";
}
