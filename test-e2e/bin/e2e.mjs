// End-to-end tests: a fresh database and the built application on a free port, as `npm start` runs them, then
// Playwright with whatever arguments were given. Everything is ended and deleted afterwards.
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { browserEnvironment } from "./browser.mjs";

const folder = join(dirname(fileURLToPath(import.meta.url)), "..");
const repository = join(folder, "..");
const report = join(folder, "reports/playwright.json");
/** Longest wait for the application: a first build on a slow machine takes minutes. */
const READY_MS = 10 * 60_000;
const STOP_MS = 60_000;

const children = new Set();

function start(args, options) {
  const child = spawn(process.execPath, args, { cwd: repository, ...options });
  children.add(child);
  child.ended = new Promise((resolve) => {
    child.once("exit", (code) => resolve(code ?? 1));
    child.once("error", () => resolve(127));
  });
  child.ended.then(() => children.delete(child));
  return child;
}

function readRun(data) {
  try {
    return JSON.parse(readFileSync(join(data, "run.json"), "utf8"));
  } catch {
    return {};
  }
}

async function stop(child) {
  if (!children.has(child)) return;
  child.kill("SIGTERM");
  const forced = setTimeout(() => child.kill("SIGKILL"), STOP_MS);
  await child.ended;
  clearTimeout(forced);
}

/** Starts the application; resolves once it answers, with how to reach it. */
async function serve(data) {
  const { DATABASE_URL, TRUNNION_SERVICE_URL, npm_lifecycle_event, ...env } = process.env;
  const app = start(["apps/cli/bin/start.mjs", "--throwaway"], {
    env: { ...env, TRUNNION_DATA: data, PORT: "0" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  for (const stream of [app.stdout, app.stderr]) {
    stream.on("data", (chunk) => {
      said += chunk;
      process.stderr.write(chunk);
    });
  }
  const end = Date.now() + READY_MS;
  while (children.has(app) && Date.now() < end) {
    const run = readRun(data);
    if (run.origin) return { app, run };
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  await stop(app);
  throw new Error(`the application did not come up:\n${said.trim().split("\n").slice(-30).join("\n")}`);
}

async function test(run, data) {
  mkdirSync(dirname(report), { recursive: true });
  const cli = join(
    dirname(createRequire(import.meta.url).resolve("@playwright/test/package.json")),
    "cli.js",
  );
  const { DATABASE_URL, ...env } = process.env;
  const playwright = start([cli, "test", "--reporter=list,json", ...process.argv.slice(2)], {
    cwd: folder,
    env: {
      ...env,
      ...(await browserEnvironment()),
      TRUNNION_ORIGIN: run.origin,
      TRUNNION_OWNER_URL: run.ownerUrl,
      TRUNNION_SERVICE_URL: run.serviceUrl,
      TRUNNION_DATA: data,
      PLAYWRIGHT_JSON_OUTPUT_FILE: report,
      PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: "1",
    },
    stdio: ["ignore", "inherit", "inherit"],
  });
  return playwright.ended;
}

async function main() {
  rmSync(report, { force: true });
  const data = mkdtempSync(join(tmpdir(), "trunnion-e2e-"));
  let app;
  for (const signal of ["SIGINT", "SIGTERM"]) {
    process.once(signal, async () => {
      await Promise.all([...children].map(stop));
      rmSync(data, { recursive: true, force: true });
      process.exit(1);
    });
  }
  try {
    const served = await serve(data);
    app = served.app;
    return await test(served.run, data);
  } catch (error) {
    console.error(error.message);
    return 1;
  } finally {
    if (app) {
      const log = join(data, "web.log");
      const web = existsSync(log) ? readFileSync(log, "utf8") : "";
      await stop(app);
      if (/\b(error|⨯)/i.test(web))
        console.error(`The application's log:\n${web.split("\n").slice(-60).join("\n")}`);
    }
    rmSync(data, { recursive: true, force: true });
  }
}

process.exitCode = await main();
