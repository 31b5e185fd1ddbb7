import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import { foldName } from "../characteristic/fold-name";

const begins = (name: string, word: string) =>
  foldName(name)
    .split(" ")
    .some((part) => part.startsWith(word));

/** Points for the words a characteristic's names have: most in its label, least where one only holds the letters. */
function score({ key, label, also = [] }: Characteristic, words: readonly string[]): number {
  const others = [...also, key];
  const points = words.map((word) => {
    if (begins(label, word)) return 3;
    if (others.some((name) => begins(name, word))) return 2;
    return [label, ...others].some((name) => foldName(name).includes(word)) ? 1 : 0;
  });
  return points.reduce((sum: number, one) => sum + one, 0);
}

/** Letters of a word below which it names too much. */
const FEWEST_LETTERS = 3;

/**
 * The characteristics that all words of a search name, by label or another name: each word begins one of a name's words,
 * capitals, accents and quotation marks aside. Shorter labels first. Empty where a word names none or has fewer than three
 * letters: then the words are about something else.
 */
export function namedCharacteristics(book: CharacteristicBook, text: string): readonly Characteristic[] {
  const words = foldName(text.replace(/["“”„]/gu, " "))
    .split(" ")
    .filter((word) => word !== "");
  if (words.length === 0 || words.some((word) => word.length < FEWEST_LETTERS)) return [];
  const length = ({ label }: Characteristic) => label.split(" ").length;
  return book.all
    .filter(({ label, also = [] }) =>
      [label, ...also].some((name) => words.every((word) => begins(name, word))),
    )
    .sort((a, b) => length(a) - length(b));
}

/**
 * The characteristics somebody may mean by some words, likeliest first: those whose label, other names or key have the
 * most of them, shorter labels before longer ones. Empty for no words, or none that occurs.
 */
export function likelyCharacteristics(
  book: CharacteristicBook,
  text: string,
  most: number,
): readonly Characteristic[] {
  const words = foldName(text)
    .split(" ")
    .filter((word) => word !== "");
  const found = book.all
    .map((characteristic, place) => ({
      characteristic,
      place,
      length: characteristic.label.split(" ").length,
      points: score(characteristic, words),
    }))
    .filter(({ points }) => points > 0)
    .sort((a, b) => b.points - a.points || a.length - b.length || a.place - b.place);
  return found.slice(0, most).map(({ characteristic }) => characteristic);
}
