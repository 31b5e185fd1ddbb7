/** Counts of three letters in a row, the ends marked. */
function trigrams(text: string): ReadonlyMap<string, number> {
  const padded = `  ${text} `;
  const counts = new Map<string, number>();
  for (let at = 0; at + 3 <= padded.length; at++) {
    const three = padded.slice(at, at + 3);
    counts.set(three, (counts.get(three) ?? 0) + 1);
  }
  return counts;
}

/**
 * How alike two texts are by their letters, from 0 to 1: the share of three-letter runs they have in common
 * (Sørensen-Dice coefficient). 1 for equal texts.
 *
 * @example textLikeness("chassis no", "chasis no") // => about 0.86
 */
export function textLikeness(one: string, other: string): number {
  if (one === other) return 1;
  const [a, b] = [trigrams(one), trigrams(other)];
  let common = 0;
  let total = 0;
  for (const [three, count] of a) {
    common += Math.min(count, b.get(three) ?? 0);
    total += count;
  }
  for (const count of b.values()) total += count;
  return total === 0 ? 0 : (2 * common) / total;
}
