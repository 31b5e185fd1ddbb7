import type { Face } from "./face";

/**
 * Groups of characters that are put into a font subset together. A document gets the groups it uses, whole:
 * so a subset depends on the document only, never on what the process drew before, and is baked once per group.
 */
const groups: readonly (readonly [from: number, to: number])[] = [
  [0x0020, 0x00ff], // Basic Latin and Latin-1, always in
  [0x2000, 0x22ff], // punctuation, fractions, arrows, mathematical signs
  [0x0100, 0x02ff], // Latin Extended-A and -B, modifier letters
  [0x0300, 0x036f], // combining marks
  [0x0370, 0x03ff], // Greek
  [0x0400, 0x052f], // Cyrillic
  [0x1e00, 0x1fff], // Latin Extended Additional, Greek Extended
];
const rest = groups.length;

/** Shape that stands for a character the font does not have: U+25A1, an empty square. */
export const replacement = "\u25a1";

/** Groups every document carries: the sheet's own words need Latin, dashes and signs, and the replacement. */
export const alwaysUsed = 0b11;

function groupOf(codePoint: number): number {
  if (codePoint === replacement.charCodeAt(0)) return 1;
  const found = groups.findIndex(([from, to]) => codePoint >= from && codePoint <= to);
  return found < 0 ? rest : found;
}

const masks = new Uint8Array(0x10000);
for (let codePoint = 0; codePoint < masks.length; codePoint++) masks[codePoint] = 1 << groupOf(codePoint);

/** Bit set of the groups a text needs. */
export function groupsUsed(text: string): number {
  let used = 0;
  for (let at = 0; at < text.length; at++) used |= masks[text.charCodeAt(at)] ?? 0;
  return used;
}

/** Code points of a face that belong to the groups, ascending. */
export function codePointsOf(face: Face, used: number): number[] {
  const points: number[] = [];
  for (let codePoint = 0x20; codePoint < masks.length; codePoint++) {
    if (face.has(codePoint) && ((masks[codePoint] ?? 0) & used) !== 0) points.push(codePoint);
  }
  return points;
}
