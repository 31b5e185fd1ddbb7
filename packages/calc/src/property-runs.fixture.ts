import fc from "fast-check";

/** For a property whose every case is slow: so many runs, or fewer where fewer are asked of all (mutation testing does). */
export function atMost(runs: number): { numRuns: number } {
  return { numRuns: Math.min(runs, fc.readConfigureGlobal().numRuns ?? runs) };
}
