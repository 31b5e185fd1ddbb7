import type { ChangeDraft, CharacteristicBook, SubmissionContent } from "@trunnion/register";

/** What sides are called by whoever looks: left and right, or nearside and offside. */
export interface SideWords {
  readonly left: string;
  readonly right: string;
}

/** What a line of a change is called: "Rear drop link length, left". */
export function lineName(
  { characteristic, side }: Pick<ChangeDraft, "characteristic" | "side">,
  book: CharacteristicBook,
  words: SideWords,
): string {
  const label = book.find(characteristic)?.label ?? characteristic;
  return side === "whole" ? label : `${label}, ${words[side].toLowerCase()}`;
}

/** The fields of every line by what they are of, for a list of what is wrong. */
export function lineLabels(
  { modifications }: SubmissionContent,
  book: CharacteristicBook,
  words: SideWords,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    modifications.flatMap(({ changes }, of) =>
      changes.flatMap((change, place) => {
        const name = lineName(change, book, words);
        const field = `modifications.${of}.changes.${place}`;
        return [
          [`${field}.after`, name],
          [`${field}.before`, `${name}, before`],
        ];
      }),
    ),
  );
}
