// npm test: everything a change has to pass, from a fresh clone on. Ends with one line, "N passed, N failed".
import { existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { runStep } from "./step.mjs";
import { tallyPlaywright, tallyVitest } from "./tally.mjs";

const repository = join(dirname(fileURLToPath(import.meta.url)), "../../..");
const bin = (path) => join(repository, "node_modules", path);

/** What the tests must not get from the surroundings: they bring a database of their own. */
const CLEARED = ["DATABASE_URL", "PORT", "TRUNNION_DATA", "TRUNNION_SERVICE_URL", "npm_lifecycle_event"];

const env = {
  NO_COLOR: "1",
  FORCE_COLOR: "0",
  DO_NOT_TRACK: "1",
  TURBO_TELEMETRY_DISABLED: "1",
  NEXT_TELEMETRY_DISABLED: "1",
  // Results are kept per kind of machine: what passes on one Node, or as root, may not on another.
  TRUNNION_RUNTIME: `${process.version} ${process.platform} ${process.arch} ${process.getuid?.() === 0 ? "root" : "user"}`,
};

const tally = { passed: 0, failures: [] };

function add({ passed, failures }) {
  tally.passed += passed;
  tally.failures.push(...failures);
}

function fail(title, message) {
  add({ passed: 0, failures: [{ title, message }] });
}

/** What turbo and npm say about themselves, and what tsc says of other packages' files: each is told where it is. */
const CHATTER =
  /^(npm error|cache (miss|hit)|> |•|WARNING|\s*$|(\.\.\/)+(packages|apps|calc|register|db|service|sheets|api|fixtures)\/)/;
/** Most lines that are told of one check. */
const MOST_LINES = 150;

function told(said, fromTurbo) {
  const all = said.split("\n");
  const lines = fromTurbo
    ? all.filter((line) => !CHATTER.test(line.replace(/^@trunnion\/[\w-]+[:#]\w+:\s*/, "").trimStart()))
    : all;
  const more = lines.length - MOST_LINES;
  return [...lines.slice(0, MOST_LINES), ...(more > 0 ? [`… and ${more} more lines`] : [])].join("\n");
}

/** A step that counts as one test. */
async function check(name, args) {
  const { code, said } = await runStep({ name, args, cwd: repository, env });
  if (code === 0) add({ passed: 1, failures: [] });
  else fail(name, told(said, args[0] === bin("turbo/bin/turbo")));
}

function turbo(...args) {
  return [bin("turbo/bin/turbo"), ...args];
}

function hasTests(folder) {
  return ["src", "regression", "bin"].some(
    (part) =>
      existsSync(join(folder, part)) &&
      readdirSync(join(folder, part), { recursive: true }).some((name) => /\.test\.(tsx?|mjs)$/.test(name)),
  );
}

/** Packages with a test script and something for it to run. */
function testedPackages() {
  const folders = ["apps", "packages"].flatMap((group) =>
    readdirSync(join(repository, group)).map((name) => join(repository, group, name)),
  );
  return [...folders, join(repository, "prisma")]
    .filter((folder) => existsSync(join(folder, "package.json")))
    .map((folder) => ({ folder, manifest: JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) }))
    .filter(({ folder, manifest }) => manifest.scripts?.test && hasTests(folder));
}

function readReport(path) {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch {
    return undefined;
  }
}

async function unitTests() {
  const packages = testedPackages();
  const reportOf = (folder) => join(folder, "reports/vitest.json");
  for (const { folder } of packages) rmSync(reportOf(folder), { force: true });
  const filters = packages.map(({ manifest }) => `--filter=${manifest.name}`);
  const args = turbo("run", "test", "--continue", "--concurrency=2", "--output-logs=errors-only", ...filters);
  const { code, said } = await runStep({ name: "unit and database tests", args, cwd: repository, env });
  const before = tally.failures.length;
  const silent = packages.filter(({ folder, manifest }) => {
    const report = readReport(reportOf(folder));
    if (report) add(tallyVitest(report));
    else fail(manifest.name, `no report at ${reportOf(folder)}: its tests did not run to the end`);
    return !report;
  });
  // What the reports do not tell, the output may.
  if (silent.length > 0 || (code !== 0 && tally.failures.length === before)) {
    fail("unit and database tests", said.split("\n").slice(-80).join("\n"));
  }
}

async function endToEndTests() {
  const { code, said } = await runStep({
    name: "end-to-end tests",
    args: [join(repository, "test-e2e/bin/e2e.mjs")],
    cwd: repository,
    env,
  });
  const report = readReport(join(repository, "test-e2e/reports/playwright.json"));
  const counted = report ? tallyPlaywright(report) : { passed: 0, failures: [] };
  add(counted);
  if (code !== 0 && counted.failures.length === 0)
    fail("end-to-end tests", said.split("\n").slice(-80).join("\n"));
  else if (code === 0 && counted.passed === 0) fail("end-to-end tests", "no test ran");
}

function tell() {
  for (const { title, message } of tally.failures) {
    console.log(`\nFAILED ${title.replaceAll(`${repository}/`, "")}`);
    console.log(
      message
        .split("\n")
        .map((line) => `  ${line}`)
        .join("\n"),
    );
  }
  console.log(`\n${tally.passed} passed, ${tally.failures.length} failed`);
  process.exitCode = tally.failures.length === 0 && tally.passed > 0 ? 0 : 1;
}

for (const name of CLEARED) delete process.env[name];
const bootstrapModule = pathToFileURL(join(repository, "apps/cli/bin/bootstrap.mjs")).href;
const { bootstrap } = await import(bootstrapModule);

try {
  await bootstrap((line) => console.log(line));
  await check(
    "typecheck",
    turbo("run", "typecheck", "--continue", "--concurrency=2", "--output-logs=errors-only"),
  );
  await check("lint", [
    bin("@biomejs/biome/bin/biome"),
    "check",
    ".",
    "--error-on-warnings",
    "--max-diagnostics=20",
  ]);
  await check("boundaries", turbo("boundaries", "--no-color"));
  await check("house", [join(repository, "packages/config/bin/house-check.mjs")]);
  await unitTests();
  await endToEndTests();
} catch (error) {
  fail("npm test", error.message);
}
tell();
