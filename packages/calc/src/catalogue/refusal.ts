/**
 * A computation that will not answer: the input lies outside what it is valid for, or no answer exists.
 * The message says what was found and what would be right.
 */
export class CalcRefusal extends Error {
  /** Stable, in capitals, e.g. "OUT_OF_REACH". */
  readonly code: string;
  /** Name of the input it is about, dotted, where it is about one. */
  readonly place?: string;

  constructor(code: string, message: string, place?: string, options?: { readonly cause: unknown }) {
    super(message, options);
    this.name = "CalcRefusal";
    this.code = code;
    if (place !== undefined) this.place = place;
  }
}
