import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { openThrowaway } from "../server";
import { applyMigrations } from "./apply";
import { diffSql, readModels } from "./diff";
import { MigrationError } from "./error";
import { readMigrations } from "./folder";
import { commentStatements, securityStatements } from "./statement";

/** The models as the last migration left them: what the next one starts from. */
const LAST = "last.prisma";

/** What was there before: nothing, or the models that belong to the last migration. */
async function modelsBefore(folder: string, lastName: string | undefined): Promise<string> {
  if (lastName === undefined) return "";
  const path = join(folder, LAST);
  const text = await readFile(path, "utf8").catch(() => "");
  const [first = "", ...models] = text.split("\n");
  if (first === `// as of ${lastName}`) return models.join("\n");
  throw new MigrationError(
    `${path} says "${first}", and the last migration is ${lastName}: put both back as they were committed together`,
  );
}

function timestamp(now: Date): string {
  return now.toISOString().replaceAll(/\D/g, "").slice(0, 14);
}

/** What to write, and where. */
export interface AuthorMigrationInput {
  /** Lower-case words with underscores. */
  readonly name: string;
  /** Folder with `models` and `migrations`. */
  readonly prismaFolder: string;
  readonly now: Date;
}

/**
 * Writes the migration from the models as they were to the models as they are: the engine's SQL, a comment for
 * every table and column, row-level security for every new table with a club. It is tried on an empty database,
 * after those before it. What the models cannot say is added to the file by hand afterwards.
 *
 * @returns the path written; undefined when the models have not changed
 * @throws MigrationError when a comment is missing, or the SQL does not run
 */
export async function authorMigration({
  name,
  prismaFolder,
  now,
}: AuthorMigrationInput): Promise<string | undefined> {
  if (!/^[a-z0-9]+(_[a-z0-9]+)*$/.test(name)) {
    throw new MigrationError(
      `"${name}" is no name for a migration: lower-case words with underscores, as in add_event_class`,
    );
  }
  const folder = join(prismaFolder, "migrations");
  await mkdir(folder, { recursive: true });
  const before = await modelsBefore(folder, (await readMigrations(folder)).at(-1)?.name);
  const after = await readModels(join(prismaFolder, "models"));
  const server = await openThrowaway();
  try {
    const sql = [
      await diffSql(server.ownerUrl, before, after),
      commentStatements(before, after).join("\n"),
      securityStatements(before, after).join("\n"),
    ].filter((part) => part !== "");
    if (sql.length === 0) return undefined;
    const migration = `${timestamp(now)}_${name}`;
    const path = join(folder, migration, "migration.sql");
    await mkdir(join(folder, migration));
    await writeFile(path, `${sql.join("\n\n")}\n`);
    await applyMigrations(server.ownerUrl, folder).catch(async (error: unknown) => {
      await rm(join(folder, migration), { recursive: true });
      throw error;
    });
    await writeFile(join(folder, LAST), `// as of ${migration}\n${after}`);
    await writeFile(join(folder, "migration_lock.toml"), 'provider = "postgresql"\n');
    return path;
  } finally {
    await server.close();
  }
}
