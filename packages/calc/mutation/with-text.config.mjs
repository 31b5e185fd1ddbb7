import usual from "../stryker.config.mjs";

// The same with every string emptied too: `npm run mutation -w @trunnion/calc -- mutation/with-text.config.mjs`.
export default {
  ...usual,
  mutator: { excludedMutations: [] },
  incrementalFile: "reports/mutation/incremental-with-text.json",
  jsonReporter: { fileName: "reports/mutation/mutation-with-text.json" },
  thresholds: { ...usual.thresholds, break: null },
};
