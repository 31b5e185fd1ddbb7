/** Letters and signs that no decomposition brings together, and what they fold to: small letters, plain dashes and quotes. */
const pairs: readonly (readonly [from: string, to: string])[] = [
  ["ABCDEFGHIJKLMNOPQRSTUVWXYZ", "abcdefghijklmnopqrstuvwxyz"],
  ["ØøŁłĐđÐðĦħŦŧŊŋı", "oollddddhhttnni"],
  ["ÆŒÞẞƏ", "æœþßə"],
  ["ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩς", "αβγδεζηθικλμνξοπρστυφχψωσ"],
  ["АБВГДЕЖЗИКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯ", "абвгдежзиклмнопрстуфхцчшщъыьэюя"],
  ["ЂЄЅІЈЉЊЋЏҐ", "ђєѕіјљњћџґ"],
  ["‐‑‒–—−", "------"],
  ["‘’ʼ“”„", "'''\"\"\""],
  ["⁄×", "/x"],
];

/** Letters that fold to two. */
const doubles: readonly (readonly [from: string, to: string])[] = [
  ["æ", "ae"],
  ["œ", "oe"],
  ["þ", "th"],
  ["ß", "ss"],
];

const folded = new Map(
  pairs.flatMap(([from, to]) => [...from].map((letter, place) => [letter, [...to][place] ?? ""] as const)),
);
for (const [letter, signs] of doubles) folded.set(letter, signs);
for (const [capital, small] of [...folded]) {
  const further = folded.get(small);
  if (further !== undefined) folded.set(capital, further);
}

/** Combining diacritical marks (Unicode block U+0300 to U+036F). */
const marks = /[\u0300-\u036f]/gu;

/**
 * How texts are compared when one is looked for in another: small letters without accents, ligatures apart, dashes and
 * quotes plain. Compatibility decomposition (Unicode NFKD), marks dropped, then a table of our own: never the
 * machine's idea of lower case, so that the database's `folded_text`, which has the same table, gives the same on any
 * server and in any locale. Scripts that are not in the table keep their case.
 * @example foldText("Grønnfjord İstanbul, STRAẞE") // => "gronnfjord istanbul, strasse"
 */
export function foldText(text: string): string {
  const plain = text.normalize("NFKD").replace(marks, "");
  return Array.from(plain, (letter) => folded.get(letter) ?? letter).join("");
}
