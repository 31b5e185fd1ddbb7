import { applyMigrations, migrationsFolder, openEmbedded, prepareServiceRole } from "@trunnion/db/admin";
import { env } from "./env";
import { dataFolder } from "./place";

/** The database, migrated, with both its connections. */
export interface OpenDatabase {
  /** The role that owns the tables: for migrations and the first filling. */
  readonly ownerUrl: string;
  /** The service's role, which owns nothing. */
  readonly serviceUrl: string;
  /** Lets go of the embedded server; the last one to do so stops it. */
  close(): Promise<void>;
}

/** How to open it. */
export interface OpenDatabaseInput {
  /** Data folder of the embedded server; the installation's own when left out. */
  readonly folder?: string;
  /** Told, a line at a time, what takes long. */
  readonly log: (line: string) => void;
  /** Nothing is forced to the disk, and closing deletes the data. Embedded only. */
  readonly throwaway?: boolean;
}

async function prepare(ownerUrl: string, log: (line: string) => void): Promise<string> {
  const applied = await applyMigrations(ownerUrl, migrationsFolder);
  if (applied.length > 0) log(`Migrated the database: ${applied.join(", ")}.`);
  return prepareServiceRole(ownerUrl, env.serviceUrl);
}

/**
 * Opens the database this installation works on: `DATABASE_URL` if it is set, else the embedded server of the
 * data folder, joined if it runs already. Pending migrations are applied.
 *
 * @throws EmbeddedServerError, MigrationError, ServiceRoleError saying what to do
 */
export async function openDatabase(input: OpenDatabaseInput): Promise<OpenDatabase> {
  const { folder = dataFolder(), log, throwaway = false } = input;
  if (env.databaseUrl !== undefined) {
    const ownerUrl = env.databaseUrl;
    return { ownerUrl, serviceUrl: await prepare(ownerUrl, log), close: async () => undefined };
  }
  const server = await openEmbedded({ dataFolder: folder, throwaway, log });
  const { ownerUrl, close } = server;
  try {
    return { ownerUrl, serviceUrl: await prepare(ownerUrl, log), close };
  } catch (error) {
    await close();
    throw error;
  }
}
