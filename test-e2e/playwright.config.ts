import { defineConfig } from "@playwright/test";
import { environment } from "./env";

export default defineConfig({
  testDir: ".",
  testMatch: "*.spec.ts",
  workers: 2,
  fullyParallel: true,
  timeout: 60_000,
  expect: { timeout: 15_000 },
  outputDir: "test-results",
  use: {
    baseURL: environment.origin,
    locale: "en-GB",
    timezoneId: "Pacific/Chatham",
    launchOptions: {
      executablePath: environment.chromium,
      args: [
        "--no-sandbox",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
        "--disable-quic",
      ],
    },
  },
});
