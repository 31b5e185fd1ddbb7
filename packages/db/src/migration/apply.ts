import pg from "pg";
import { NO_FILTER, withEngine } from "./engine";
import { MigrationError } from "./error";
import { type Migration, migrationList, readMigrations } from "./folder";

/** Any number, the same in every process: whoever holds it migrates. */
const ADVISORY_LOCK = 7_180_452_911;
/** Longest wait for another process that migrates. */
const LOCK_TIMEOUT = "120s";
/** Longest wait for a connection, in milliseconds. */
const CONNECT_MS = 15_000;
const OLDEST_SERVER = 15;

/** Where a connection leads, without its password. */
function placeOf(url: string): string {
  try {
    const { hostname, port, pathname, username } = new URL(url);
    return `${hostname}:${port || 5432}${pathname} as ${decodeURIComponent(username) || "the default user"}`;
  } catch {
    return "an address that is no postgresql:// URL";
  }
}

async function connect(ownerUrl: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: ownerUrl, connectionTimeoutMillis: CONNECT_MS });
  client.on("error", () => undefined);
  try {
    await client.connect();
    return client;
  } catch (error) {
    throw new MigrationError(
      `no connection to the database at ${placeOf(ownerUrl)}: ${(error as Error).message}`,
      {
        cause: error,
      },
    );
  }
}

async function checkServer(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ server_version_num: string }>("SHOW server_version_num");
  const version = Math.floor(Number(rows[0]?.server_version_num) / 10_000);
  if (version >= OLDEST_SERVER) return;
  throw new MigrationError(`the database is PostgreSQL ${version}; ${OLDEST_SERVER} or newer is needed`);
}

async function takeTurn(client: pg.Client): Promise<void> {
  await client.query(`SET lock_timeout = '${LOCK_TIMEOUT}'`);
  try {
    await client.query("SELECT pg_advisory_lock($1)", [ADVISORY_LOCK]);
  } catch (error) {
    if ((error as { code?: string }).code !== "55P03") throw error;
    throw new MigrationError(
      `another process has been migrating this database for ${LOCK_TIMEOUT}; wait for it or end it, and start again`,
    );
  }
}

interface Recorded {
  readonly migration_name: string;
  readonly checksum: string;
  readonly finished: boolean;
}

async function readRecorded(client: pg.Client): Promise<Recorded[]> {
  const { rows: tables } = await client.query("SELECT FROM pg_tables WHERE tablename = '_prisma_migrations'");
  if (tables.length === 0) return [];
  const { rows } = await client.query<Recorded>(
    `SELECT migration_name, checksum, finished_at IS NOT NULL AS finished
       FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY started_at`,
  );
  return rows;
}

function checkHistory(migrations: readonly Migration[], recorded: readonly Recorded[]): void {
  const known = new Map(migrations.map(({ name, checksum }) => [name, checksum]));
  for (const { migration_name: name, checksum, finished } of recorded) {
    const expected = known.get(name);
    if (expected === undefined) {
      throw new MigrationError(
        `the database has the migration ${name}, which is not among this program's: it was last used by a newer version; use that one`,
      );
    }
    if (finished && expected !== checksum) {
      throw new MigrationError(
        `the migration ${name} was changed after this database had it: put the file back as it was and write a new migration instead`,
      );
    }
  }
}

/**
 * Brings a database up to date with the migrations of a folder, one process at a time. What is there already
 * is left alone; one that was cut off half-way (it took no effect: each is a transaction) is tried again.
 *
 * @returns the names of those applied now, oldest first
 * @throws MigrationError when there is no connection, the server is too old, the database is ahead of the folder or disagrees with it,
 *   or a migration fails; those before the failing one stay applied
 */
export async function applyMigrations(ownerUrl: string, folder: string): Promise<string[]> {
  const migrations = await readMigrations(folder);
  const client = await connect(ownerUrl);
  try {
    await checkServer(client);
    await takeTurn(client);
    const recorded = await readRecorded(client);
    checkHistory(migrations, recorded);
    const finished = new Set(recorded.filter((row) => row.finished).map((row) => row.migration_name));
    // Asked first in plain SQL: loading the engine takes half a second, and on most starts nothing is to do.
    if (migrations.every(({ name }) => finished.has(name))) return [];
    const cutOff = recorded.filter((row) => !row.finished).map((row) => row.migration_name);
    return await runEngine(ownerUrl, folder, { migrations, cutOff }).catch(async (error: unknown) => {
      throw await explained(error, client);
    });
  } finally {
    await client.end();
  }
}

/** Says which migration failed, or that the database is somebody else's. */
async function explained(error: unknown, client: pg.Client): Promise<unknown> {
  if (!(error instanceof MigrationError)) return error;
  if (error.message.startsWith("P3005")) {
    return new MigrationError(
      "the database holds tables and is not Trunnion's: name an empty database in DATABASE_URL (P3005)",
      { cause: error },
    );
  }
  const failed = (await readRecorded(client)).find((row) => !row.finished)?.migration_name;
  return failed === undefined
    ? error
    : new MigrationError(`the migration ${failed} failed and took no effect: ${error.message}`, {
        cause: error,
      });
}

function runEngine(
  ownerUrl: string,
  folder: string,
  { migrations, cutOff }: { migrations: readonly Migration[]; cutOff: readonly string[] },
): Promise<string[]> {
  const migrationsList = migrationList(folder, migrations);
  return withEngine(ownerUrl, async (engine) => {
    for (const migrationName of cutOff) await engine.markMigrationRolledBack({ migrationName });
    const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters: NO_FILTER });
    return appliedMigrationNames;
  });
}
