import fc from "fast-check";

// Tables of cases are built while a test file is read: the mutant of the run before must be off by then.
const stryker = globalThis.__stryker__ ?? globalThis.__stryker2__;
if (stryker !== undefined) stryker.activeMutant = undefined;

// A property finds a mutant in its first few cases or hardly at all.
fc.configureGlobal({ ...fc.readConfigureGlobal(), numRuns: 25 });
