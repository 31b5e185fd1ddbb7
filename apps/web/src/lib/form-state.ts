import type { FieldDifference, RefusalText } from "@trunnion/register";

/** What two people made of one record, and the version that stands now. */
export interface Conflict {
  readonly version: number;
  readonly differences: readonly FieldDifference[];
}

/** What a form knows after it was sent: everything that was typed, and what was wrong with it. */
export interface FormState {
  /** How often it was sent; 0 before. */
  readonly tries: number;
  /** What was typed, by field. */
  readonly typed: Readonly<Record<string, readonly string[]>>;
  /** What is wrong, by field. */
  readonly errors: Readonly<Record<string, readonly string[]>>;
  readonly refusal?: RefusalText;
  readonly conflict?: Conflict;
  /** Doubts it was refused for, which the next sending says are to stand. */
  readonly sure?: string;
  /** What was done, where the form stays on its page. */
  readonly done?: string;
}

/** A form nobody has sent yet. */
export const untouched: FormState = { tries: 0, typed: {}, errors: {} };

/** A server action behind a form. */
export type FormAction = (before: FormState, data: FormData) => Promise<FormState>;
