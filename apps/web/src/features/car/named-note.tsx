import { type CharacteristicBook, namedCharacteristics } from "@trunnion/register";
import { sayCount } from "../../lib/car-count";
import { spreadPath } from "../../lib/path";

export interface NamedNoteProps {
  readonly club: string;
  /** The words as typed. */
  readonly words: string | undefined;
  readonly book: CharacteristicBook;
}

/** Most that are named one by one. */
const NAMED = 6;

/** Which characteristics the words of a search name, each with the way to how it lies across the cars. */
export function NamedNote({ club, words = "", book }: NamedNoteProps) {
  const found = namedCharacteristics(book, words);
  if (found.length === 0) return null;
  const more = found.length - NAMED;
  return (
    <p className="max-w-prose pt-3">
      “{words.trim()}” is also what {found.length === 1 ? "a characteristic is" : "characteristics are"}{" "}
      called, across the cars:{" "}
      {found.slice(0, NAMED).map(({ key, label }, place) => (
        <span key={key}>
          {place === 0 ? "" : ", "}
          <a href={spreadPath(club, key)}>{label}</a>
        </span>
      ))}
      {more > 0 ? ` and ${sayCount(more)} more` : ""}.
    </p>
  );
}
