// Loads TypeScript. Read file by file, the sources take seconds; as one bundle, made anew on every run, a fraction.
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { createRequire, isBuiltin } from "node:module";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { repository } from "./bootstrap.mjs";

/** Bundles not used for so long are deleted. */
const KEEP_MS = 14 * 24 * 3_600_000;

/**
 * Our packages are bundled; those of npm are left where they are, and named by that place, since the bundle lies
 * elsewhere than who imports them. A file goes on knowing where it lies.
 */
const ours = {
  name: "ours",
  setup(build) {
    build.onResolve({ filter: /^[^./]/ }, async ({ path, importer, resolveDir, kind, pluginData }) => {
      if (pluginData === "asked" || isBuiltin(path) || kind === "entry-point") return undefined;
      const found = await build.resolve(path, { importer, resolveDir, kind, pluginData: "asked" });
      if (path.startsWith("@trunnion/") || found.errors.length > 0) return found;
      return { path: pathToFileURL(found.path).href, external: true };
    });
    build.onLoad({ filter: /\.ts$/ }, ({ path }) => {
      const text = readFileSync(path, "utf8");
      if (!text.includes("import.meta.url")) return undefined;
      return {
        contents: text.replaceAll("import.meta.url", JSON.stringify(pathToFileURL(path).href)),
        loader: "ts",
      };
    });
  },
};

async function bundle(entry) {
  // The esbuild that tsx brings.
  const { build } = createRequire(createRequire(import.meta.url).resolve("tsx"))("esbuild");
  const { outputFiles } = await build({
    absWorkingDir: repository,
    entryPoints: [entry],
    bundle: true,
    splitting: true,
    write: false,
    outdir: join(repository, "node_modules/.cache/trunnion/source"),
    outExtension: { ".js": ".mjs" },
    entryNames: "[name]-[hash]",
    format: "esm",
    platform: "node",
    target: "node20",
    // None but Node's own: esbuild would otherwise prefer what packages offer to bundlers.
    conditions: [],
    sourcemap: "inline",
    sourcesContent: false,
    logLevel: "error",
    plugins: [ours],
  });
  return outputFiles;
}

/** Writes a file whole or not at all: another run may be reading it. */
function put({ path, contents }) {
  if (existsSync(path)) {
    const now = new Date();
    utimesSync(path, now, now);
    return;
  }
  const draft = `${path}.${process.pid}`;
  writeFileSync(draft, contents);
  renameSync(draft, path);
}

function clearOld(folder) {
  const oldest = Date.now() - KEEP_MS;
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (statSync(path).mtimeMs < oldest) rmSync(path, { force: true });
  }
}

/**
 * Imports a TypeScript module.
 *
 * @param {string} path from the repository's root
 */
export async function importSource(path) {
  const entry = join(repository, path);
  const files = await bundle(entry);
  const folder = join(repository, "node_modules/.cache/trunnion/source");
  mkdirSync(folder, { recursive: true });
  for (const file of files) put(file);
  clearOld(folder);
  process.setSourceMapsEnabled(true);
  const main = files.find((file) => basename(file.path).startsWith(`${basename(entry, ".ts")}-`));
  return import(pathToFileURL(main.path).href);
}
