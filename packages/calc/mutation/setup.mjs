import fc from "fast-check";

// Tables of cases are built while a test file is read: the mutant of the run before must be off by then.
const stryker = globalThis.__stryker__;
if (stryker !== undefined) stryker.activeMutant = undefined;

// What earlier files covered is told already. Told again it would multiply the counts that endless loops are known by.
for (const counts of Object.values(stryker?.mutantCoverage ?? {}))
  for (const key of Object.keys(counts)) delete counts[key];

// Stryker calls a loop endless at a hundred times the rounds that the unchanged code makes; twenty times are enough to tell.
if (stryker?.hitLimit !== undefined) stryker.hitLimit /= 5;

// A property finds a mutant in its first few cases or hardly at all, and nobody reads the smallest case that does.
fc.configureGlobal({ ...fc.readConfigureGlobal(), numRuns: 10, endOnFailure: true });
