/** What is wrong with one field of an entry: what was found and what would be right, in a sentence. */
export interface FieldProblem {
  /** Name of the field as the input has it; parts of a list by place: `numbers.2.from`. */
  readonly field: string;
  readonly message: string;
}

/**
 * An entry that cannot be read, told at the field. The first of the three kinds of error, for what a schema alone cannot
 * see: dates that need today, values that need the dictionary, numbers that need the series. Nothing was written.
 */
export class Invalid extends Error {
  override readonly name = "Invalid";
  constructor(readonly problems: readonly FieldProblem[]) {
    super(problems.map(({ field, message }) => `${field}: ${message}`).join("; "));
  }
}

/** Gathers what is wrong with an entry, so that all of it is told at once. */
export class Problems {
  readonly #found: FieldProblem[] = [];

  add(field: string, message: string): void {
    this.#found.push({ field, message });
  }

  /** @throws Invalid if anything was added */
  throwIfAny(): void {
    if (this.#found.length > 0) throw new Invalid(this.#found);
  }
}

/** How a form says which doubts it was shown and lets stand: their words, so that a new doubt is asked about anew. */
export function sureOf(doubts: readonly string[]): string {
  return doubts.join(" | ");
}
