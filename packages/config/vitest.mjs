import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/**
 * One vitest preset for every package: an odd time zone, so that a date that leans on the machine's
 * own zone fails here; a JSON report, which the closing line of `npm test` is summed from.
 */
export function preset(overrides = {}) {
  process.env.TZ = "Pacific/Chatham";
  return defineConfig({
    test: {
      include: ["src/**/*.test.ts", "src/**/*.test.tsx", "regression/**/*.test.ts"],
      reporters: ["default", "json"],
      outputFile: { json: "reports/vitest.json" },
      setupFiles: [fileURLToPath(new URL("property-seed.mjs", import.meta.url))],
      pool: "threads",
      maxWorkers: 2,
      // A busy machine is not a fault: these only end what hangs.
      testTimeout: 60_000,
      hookTimeout: 180_000,
      ...overrides,
    },
  });
}
