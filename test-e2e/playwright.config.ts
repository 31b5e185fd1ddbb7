import { defineConfig } from "@playwright/test";
import { environment } from "./env";

/**
 * What a whole browser brings along and no test looks at. Playwright's own list first, since the switch counts once;
 * then the address bar's pop-up, two hidden pages for every window, which take half of the browser's time.
 */
const needless = [
  ...["AvoidUnnecessaryBeforeUnloadCheckSync", "DestroyProfileOnBrowserClose", "LensOverlay", "MediaRouter"],
  ...["HttpsUpgrades", "HttpsFirstBalancedModeAutoEnable", "PaintHolding", "ThirdPartyStoragePartitioning"],
  ...["OptimizationHints", "NetworkTimeServiceQuerying", "AimEnabled", "PreconnectToSearch"],
  ...["WebUIOmniboxPopup", "WebUIOmniboxAimPopup", "WebUIOmniboxFullPopup"],
];

export default defineConfig({
  testDir: ".",
  testMatch: "*.spec.ts",
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 15_000 },
  outputDir: "test-results",
  use: {
    baseURL: environment.origin,
    actionTimeout: 20_000,
    navigationTimeout: 30_000,
    locale: "en-GB",
    // Nobody's own zone, and not a whole hour from any: a day that slips is seen.
    timezoneId: "Pacific/Chatham",
    viewport: { width: 1440, height: 900 },
    launchOptions: {
      executablePath: environment.chromium,
      args: [
        "--no-sandbox",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--no-first-run",
        "--disable-quic",
        `--disable-features=${needless.join(",")}`,
      ],
    },
  },
});
