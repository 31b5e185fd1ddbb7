// The browser for the end-to-end tests: the machine's own Chromium, or the one inside an npm package.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { userInfo } from "node:os";
import { dirname, join } from "node:path";

const INSTALLED = ["/usr/bin/chromium", "/usr/bin/chromium-browser"];

/** Some systems have a script of that name which only says how to install it. */
function runs(path) {
  return existsSync(path) && spawnSync(path, ["--version", "--no-sandbox"], { timeout: 20_000 }).status === 0;
}

/**
 * Unpacks the packaged Chromium, once per user and version. The package unpacks into the temporary folder that all
 * users share, readable by the first of them only, and takes a half-written file for a whole one: hence a folder of
 * our own beside the installed packages, named only when everything is in it.
 */
async function packaged() {
  const entry = createRequire(import.meta.url).resolve("@sparticuz/chromium");
  let folder = dirname(entry);
  while (!existsSync(join(folder, "bin", "chromium.br"))) folder = dirname(folder);
  const { version } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const cache = join(folder, "../../.cache/trunnion");
  const target = join(cache, `chromium-${version}-${userInfo().uid}`);
  if (existsSync(join(target, "chromium"))) return target;
  const draft = `${target}.${process.pid}`;
  mkdirSync(draft, { recursive: true, mode: 0o700 });
  const before = process.env.TMPDIR;
  process.env.TMPDIR = draft;
  try {
    const { default: chromium } = await import("@sparticuz/chromium");
    await chromium.executablePath();
  } finally {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
  }
  try {
    renameSync(draft, target);
  } catch {
    // Another run was faster.
    rmSync(draft, { recursive: true, force: true });
  }
  return target;
}

/** @returns {Promise<Record<string, string>>} the environment in which Playwright finds its browser */
export async function browserEnvironment() {
  const given = process.env.TRUNNION_CHROMIUM;
  const installed = given || INSTALLED.find(runs);
  if (installed) return { TRUNNION_CHROMIUM: installed };
  const folder = await packaged();
  const fonts = existsSync("/etc/fonts/fonts.conf") ? {} : { FONTCONFIG_PATH: join(folder, "fonts") };
  return { TRUNNION_CHROMIUM: join(folder, "chromium"), ...fonts };
}
