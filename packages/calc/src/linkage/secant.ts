/** Where to look for a nought, and how near it must come. */
export interface SecantSearch {
  readonly first: number;
  readonly second: number;
  /** Largest value that counts as nought. */
  readonly close: number;
}

const mostRounds = 50;

/**
 * Finds where a nearly straight function is nought, by the secant method, and leaves it evaluated there last. `null`
 * if it is not found in 50 rounds.
 */
export function secant(
  measure: (at: number) => number,
  { first, second, close }: SecantSearch,
): number | null {
  let before = first;
  let missBefore = measure(before);
  if (Math.abs(missBefore) <= close) return before;
  let here = second;
  for (let round = 0; round < mostRounds; round += 1) {
    const miss = measure(here);
    if (Math.abs(miss) <= close) return here;
    if (miss === missBefore) return null;
    const next = here - (miss * (here - before)) / (miss - missBefore);
    before = here;
    missBefore = miss;
    here = next;
  }
  return null;
}
