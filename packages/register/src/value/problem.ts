import type { Characteristic } from "../characteristic/characteristic";
import type { Value } from "./value";

/** What can be wrong with an entry. Closed: the interface may word each. */
export const valueProblemCodes = [
  "EMPTY",
  "NOTATION",
  "OUT_OF_RANGE",
  "NOT_A_CHOICE",
  "NOT_A_TEXT",
  "NOT_A_DATE",
  "NOT_REMOVABLE",
] as const;
export type ValueProblemCode = (typeof valueProblemCodes)[number];

/** Why an entry is no value of its characteristic: what is wrong, and what would be right. */
export interface ValueProblem {
  readonly code: ValueProblemCode;
  /** A sentence that names the characteristic and quotes the entry. */
  readonly message: string;
  readonly entered: string;
  /** What would have been understood, as the end of "expected …". */
  readonly expected: string;
}

export type ParsedValue =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: ValueProblem };

/** What {@link problemWith} needs to word a problem. */
export interface ProblemParts {
  readonly code: ValueProblemCode;
  /** What is wrong, to follow the quoted entry: "is not a date". */
  readonly is: string;
  readonly expected: string;
}

const quotedLimit = 80;

/** Words a problem: `Front camber: "steep" is not understood; expected …`. */
export function problemWith(
  characteristic: Characteristic,
  entered: string,
  { code, is, expected }: ProblemParts,
): { readonly ok: false; readonly problem: ValueProblem } {
  const quoted = entered.length > quotedLimit ? `${entered.slice(0, quotedLimit)}…` : entered;
  const message = `${characteristic.label}: "${quoted}" ${is}; expected ${expected}`;
  return { ok: false, problem: { code, message, entered, expected } };
}
