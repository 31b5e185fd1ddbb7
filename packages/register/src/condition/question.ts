import type { Characteristic } from "../characteristic/characteristic";
import type { DraftQuestion } from "./draft";

/** What may be asked of a characteristic, by its kind; the first is what is asked most. */
export function questionsFor({ kind, sided, removable }: Characteristic): readonly DraftQuestion[] {
  const own: Readonly<Record<Characteristic["kind"], readonly DraftQuestion[]>> = {
    quantity: ["number", "verdict", "difference", "ratio"],
    choice: ["code", "verdict"],
    designation: ["code", "verdict", "textHas"],
    text: ["textHas", "verdict"],
    date: ["date", "verdict"],
  };
  return [
    ...own[kind],
    ...(sided ? (["sidesDiffer"] as const) : []),
    "readingOlderThan",
    "recorded",
    ...(removable ? (["absent"] as const) : []),
  ];
}

/** What a question is called in the form. */
export const questionWords: Readonly<Record<DraftQuestion, string>> = {
  number: "its value",
  code: "is one of",
  textHas: "contains the words",
  date: "its date",
  verdict: "verdict against specification",
  difference: "value less the specified one",
  ratio: "value as a multiple of the specified one",
  sidesDiffer: "left and right differ",
  readingOlderThan: "latest reading is older than",
  recorded: "is recorded",
  absent: "is not fitted",
};
