import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import type { MigrationList } from "@prisma/schema-engine-wasm/schema_engine_bg";
import { MigrationError } from "./error";

/** One migration: a folder's name, and the SQL in it. */
export interface Migration {
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the SQL, as `_prisma_migrations` keeps it. */
  readonly checksum: string;
}

const NAME = /^\d{14}_[a-z0-9_]+$/;
const LOCK_FILE = "migration_lock.toml";

async function readMigration(folder: string, name: string): Promise<Migration> {
  if (!NAME.test(name)) {
    throw new MigrationError(
      `${join(folder, name)}: a migration is named by 14 digits of date and time, "_", and lower-case words`,
    );
  }
  const path = join(folder, name, "migration.sql");
  const sql = await readFile(path, "utf8").catch(() => undefined);
  if (sql === undefined)
    throw new MigrationError(`${path} cannot be read: every migration's folder holds one`);
  return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
}

/**
 * The migrations of a folder, oldest first.
 *
 * @throws MigrationError when the folder is not there, or one of them is misnamed or empty
 */
export async function readMigrations(folder: string): Promise<Migration[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => undefined);
  if (!entries)
    throw new MigrationError(`${folder} cannot be read: the migrations' folder was expected there`);
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return Promise.all(names.sort().map((name) => readMigration(folder, name)));
}

/** The same, as the engine wants to be told. */
export function migrationList(folder: string, migrations: readonly Migration[]): MigrationList {
  return {
    baseDir: folder,
    lockfile: { path: LOCK_FILE, content: 'provider = "postgresql"\n' },
    shadowDbInitScript: "",
    migrationDirectories: migrations.map(({ name, sql }) => ({
      path: name,
      migrationFile: { path: "migration.sql", content: { tag: "ok", value: sql } },
    })),
  };
}
