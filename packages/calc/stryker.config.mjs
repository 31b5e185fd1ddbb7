// Mutation testing of the calculator: `npm run mutation -w @trunnion/calc`, not part of `npm test`.
// One topic: `npm run mutation -w @trunnion/calc -- --mutate 'src/tyre/**/*.ts,!src/**/*.test.ts'`.
// Results add up in reports/mutation; `npm run mutation:score -w @trunnion/calc` prints them per topic.

/** @type {import("@stryker-mutator/api/core").PartialStrykerOptions} */
export default {
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  mutate: ["src/**/*.ts", "!src/**/*.test.ts", "!src/**/*.fixture.ts"],
  ignorePatterns: ["reports", ".turbo"],
  coverageAnalysis: "perTest",
  // What runs while a module loads (schemas, labels, tables of figures) could only be tried by loading everything anew.
  ignoreStatic: true,
  // Labels, formulas as printed, warnings' wording: text, not numbers. Words that decide something (units, names of fields,
  // kinds) are compared by conditions, whose mutants stay in. mutation/with-text.config.mjs leaves text in.
  mutator: { excludedMutations: ["StringLiteral"] },
  incremental: true,
  incrementalFile: "reports/mutation/incremental.json",
  tempDirName: "reports/mutation/sandbox",
  reporters: ["clear-text", "json", "progress-append-only"],
  jsonReporter: { fileName: "reports/mutation/mutation.json" },
  clearTextReporter: { allowColor: false, allowEmojis: false, logTests: false, reportTests: false },
  concurrency: 1,
  // A busy machine is not an endless loop: those are mostly found by counting.
  timeoutMS: 30_000,
  dryRunTimeoutMinutes: 20,
  // TypeScript 7 has no API for the checks Stryker would switch off, and none for reading a tsconfig: name one that is not there.
  tsconfigFile: "none.json",
  disableTypeChecks: false,
  thresholds: { high: 90, low: 85, break: 85 },
};
