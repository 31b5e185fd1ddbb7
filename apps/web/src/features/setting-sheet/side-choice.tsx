import { sideWords } from "../../lib/assembly";
import { chooseSides } from "./side-action";
import type { SideWords } from "./side-words";

export interface SideChoiceProps {
  readonly words: SideWords;
  /** Where to come back to. */
  readonly here: string;
}

/** Left and right, or nearside and offside: whichever the reader is used to. */
export function SideChoice({ words, here }: SideChoiceProps) {
  const other = words.left === sideWords.nearOff.left ? "leftRight" : "nearOff";
  return (
    <form action={chooseSides.bind(null, here)} className="print:hidden">
      <button
        type="submit"
        name="sides"
        value={other}
        className="inline-flex min-h-11 cursor-pointer items-center text-small underline"
      >
        Say {sideWords[other].left.toLowerCase()} and {sideWords[other].right.toLowerCase()}
      </button>
    </form>
  );
}
