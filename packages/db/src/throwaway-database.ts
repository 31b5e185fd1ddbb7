import { Database } from "./client";
import { migrationsFolder } from "./folder";
import { applyMigrations } from "./migration";
import { prepareServiceRole } from "./role";
import { openThrowaway } from "./server";

/** A migrated database of a test's own, with both connections. */
export interface ThrowawayDatabase {
  readonly ownerUrl: string;
  readonly serviceUrl: string;
  readonly database: Database;
  close(): Promise<void>;
}

/** Opens an empty, migrated database on a server of its own; closing deletes it. For tests and benchmarks. */
export async function openThrowawayDatabase(): Promise<ThrowawayDatabase> {
  const server = await openThrowaway();
  const { ownerUrl } = server;
  await applyMigrations(ownerUrl, migrationsFolder);
  const serviceUrl = await prepareServiceRole(ownerUrl);
  const database = new Database(serviceUrl);
  const close = async () => {
    await database.close();
    await server.close();
  };
  return { ownerUrl, serviceUrl, database, close };
}
