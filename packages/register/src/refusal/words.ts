/** What a person reads: what was wrong and where, then what to do. */
export interface RefusalText {
  readonly what: string;
  readonly remedy: string;
}

/** One wording per code: a code without one does not compile. */
export type Words<Details> = { readonly [C in keyof Details]: (details: Details[C]) => RefusalText };

/** Words in a row, for a sentence; "none" when there are none. */
export const list = (words: readonly string[]) => (words.length === 0 ? "none" : words.join(", "));

export const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;
