import type { BrowserGround } from "@trunnion/api";
import { type CharacteristicBook, type SubmissionBasis, stateOn } from "@trunnion/register";

/** What a submission is read against, in the browser. */
export function basisIn(
  { today, builtEarliest, fold }: BrowserGround,
  book: CharacteristicBook,
): SubmissionBasis {
  return {
    book,
    today,
    stateOn: (day) => stateOn(day, fold),
    ...(builtEarliest === undefined ? {} : { builtEarliest }),
  };
}
