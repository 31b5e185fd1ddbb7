import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { dirname, join, relative } from "node:path";
import { withLock } from "@trunnion/db/admin";
import { StartFault } from "./fault";
import { repository } from "./place";
import { lastLines, type Program, startProgram } from "./program";

const WEB = join(repository, "apps/web");
const OUTPUT = join(WEB, ".next");
const LOCK = join(WEB, ".turbo/build.lock");
const STAMP = join(OUTPUT, "trunnion-stamp");

/** Longest wait for another start that builds. */
const BUILD_MS = 600_000;

/** What the built application is made from. */
const SOURCES = [
  ...["apps/web", "packages/api", "packages/calc", "packages/db", "packages/register", "packages/service"],
  ...["packages/sheets", "packages/config", "prisma/models", "package-lock.json"],
];
const NOT_SOURCE =
  /(^|\/)(node_modules|\.next|\.turbo|reports|generated|bin)(\/|$)|\.test\.tsx?$|\.tsbuildinfo$|next-env\.d\.ts$/;

async function filesUnder(path: string): Promise<string[]> {
  if (NOT_SOURCE.test(relative(repository, path))) return [];
  const entries = await readdir(path, { withFileTypes: true }).catch(() => undefined);
  if (!entries) return existsSync(path) ? [path] : [];
  const found = await Promise.all(
    entries.map((entry) =>
      entry.isDirectory() ? filesUnder(join(path, entry.name)) : [join(path, entry.name)],
    ),
  );
  return found.flat().filter((file) => !NOT_SOURCE.test(relative(repository, file)));
}

/** One number for everything the built application depends on. */
async function fingerprint(): Promise<string> {
  const files = (await Promise.all(SOURCES.map((source) => filesUnder(join(repository, source)))))
    .flat()
    .sort();
  const hash = createHash("sha256").update(process.versions.node);
  for (const file of files)
    hash
      .update(relative(repository, file))
      .update("\0")
      .update(await readFile(file))
      .update("\0");
  return hash.digest("hex");
}

/** What a build needs to know. */
export interface BuildInput {
  /** Folder for its log. */
  readonly folder: string;
  readonly log: (line: string) => void;
  /** Given the program while it runs, so that it can be ended. */
  readonly started: (program: Program) => Promise<void>;
}

async function build({ folder, log, started }: BuildInput): Promise<void> {
  log("Building the web application (a minute or two) …");
  const begun = performance.now();
  const logFile = join(folder, "build.log");
  // Not by way of turbo: ended half-way, it reports success.
  const next = join(repository, "node_modules/next/dist/bin/next");
  const program = await startProgram({ command: [next, "build"], cwd: WEB, logFile });
  await started(program);
  const code = await program.ended;
  if (code !== 0)
    throw new StartFault(
      `the web application did not build. The end of ${logFile}:\n${await lastLines(logFile)}`,
    );
  log(`Built in ${Math.round((performance.now() - begun) / 1000)} s.`);
}

/**
 * Builds the web application, unless what is there was built from these very sources.
 *
 * @throws StartFault with the end of the build's log
 */
export async function buildIfNeeded(input: BuildInput): Promise<void> {
  await mkdir(OUTPUT, { recursive: true });
  await mkdir(dirname(LOCK), { recursive: true });
  // Two starts with different data folders share the built application.
  await withLock(
    LOCK,
    async () => {
      const wanted = await fingerprint();
      const found = await readFile(STAMP, "utf8").catch(() => "");
      if (found === wanted && existsSync(join(OUTPUT, "BUILD_ID"))) return;
      // Whatever is cut off here must not pass for built.
      await rm(STAMP, { force: true });
      await build(input);
      await writeFile(STAMP, wanted);
    },
    BUILD_MS,
  );
}
