/**
 * How names people write are compared: small letters without accents, and one blank for every run of blanks, dots,
 * dashes, underscores and strokes. A text of nothing but such signs folds to the empty text.
 * @example foldName("Coupé,  Fixed-Head") // => "coupe, fixed head"
 */
export function foldName(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[\s._/‐‑–—-]+/gu, " ")
    .trim();
}
