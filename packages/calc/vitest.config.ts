import { preset } from "@trunnion/config/vitest";
import { lastingWorker } from "./mutation/lasting-worker.mjs";

/** Stryker says so to the processes it starts. */
const mutating = process.env.STRYKER_MUTATOR_WORKER !== undefined;

const usual = preset();

export default mutating
  ? {
      ...usual,
      plugins: [lastingWorker],
      test: {
        ...usual.test,
        isolate: false,
        reporters: [],
        setupFiles: [...usual.test.setupFiles, new URL("mutation/setup.mjs", import.meta.url).pathname],
      },
    }
  : usual;
