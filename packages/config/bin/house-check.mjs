// The house's own rules: sizes, names, layout, import law. Prints what breaks them; exit code 1 if anything does.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { faultsOf } from "./house-rule.mjs";
import { testOnlyImports, unlawfulDependencies } from "./import-law.mjs";

const repository = join(dirname(fileURLToPath(import.meta.url)), "../../..");

/** What a plain walk leaves out, where git cannot be asked: a downloaded archive, somebody else's clone. */
const IGNORED =
  /(^|\/)(node_modules|generated|reports|coverage|dist|test-results|\.[^/]+)(\/|$)|next-env\.d\.ts$|\.tsbuildinfo$/;

function walk(folder = "") {
  return readdirSync(join(repository, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
    if (IGNORED.test(path)) return [];
    return entry.isDirectory() ? walk(path) : [path];
  });
}

/** Every file that is, or would be, committed. */
function files() {
  const listed = spawnSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"], {
    cwd: repository,
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
  });
  if (listed.status !== 0) return walk();
  return listed.stdout.split("\0").filter((path) => path !== "" && existsSync(join(repository, path)));
}

function manifestOf(path, manifests) {
  return manifests.find(({ folder }) => path.startsWith(`${folder}/`));
}

/** @returns {string[]} one line per breach */
export function houseFaults() {
  const paths = files();
  const manifests = paths
    .filter((path) => /^((apps|packages)\/[^/]+|prisma|test-e2e)\/package\.json$/.test(path))
    .map((path) => ({ folder: dirname(path), ...JSON.parse(readFileSync(join(repository, path), "utf8")) }));
  const lawful = manifests.flatMap((manifest) => unlawfulDependencies(manifest));
  const perFile = paths.flatMap((path) => {
    const text =
      statSync(join(repository, path)).size > 5_000_000 ? "" : readFileSync(join(repository, path), "utf8");
    const faults = faultsOf({ path, text });
    const manifest = manifestOf(path, manifests);
    const isSource =
      /^(apps|packages)\/[^/]+\/src\/.*\.tsx?$/.test(path) && !/\.(test|fixture)\.tsx?$/.test(path);
    const borrowed = isSource && manifest ? testOnlyImports(text, manifest) : [];
    return [...faults, ...borrowed.map((name) => `imports ${name}, which is not among its dependencies`)].map(
      (fault) => `${path}: ${fault}`,
    );
  });
  return [...lawful, ...perFile];
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const faults = houseFaults();
  for (const fault of faults) console.error(fault);
  console.log(
    faults.length === 0 ? "The house's rules hold." : `${faults.length} breaches of the house's rules.`,
  );
  process.exitCode = faults.length === 0 ? 0 : 1;
}
