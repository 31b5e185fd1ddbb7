import { PrismaPg } from "@prisma/adapter-pg";
import type { SqlDriverAdapter, SqlMigrationAwareDriverAdapterFactory } from "@prisma/driver-adapter-utils";
import pg from "pg";
import { MigrationError } from "./error";

/** Where in a script the server stopped, and its words. */
function placed(error: unknown, script: string): Error {
  if (!(error instanceof pg.DatabaseError) || error.position === undefined) return error as Error;
  const before = script.slice(0, Number(error.position) - 1).split("\n");
  const line = script.split("\n")[before.length - 1]?.trim() ?? "";
  return new Error(`line ${before.length}, "${line}": ${error.message}`, { cause: error });
}

/**
 * Prisma's driver adapter, for migrations. Its own `executeScript` cuts a script at every semicolon, those in
 * comments, texts and function bodies too. Here the server reads the script whole, as one transaction:
 * a migration is applied entirely or not at all.
 */
export class WholeScriptAdapterFactory implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider = "postgres";
  readonly adapterName = "@prisma/adapter-pg";
  /** What the server said of the script that failed: the engine's own account of it is a guess. */
  scriptError: Error | undefined;
  readonly #inner: PrismaPg;
  readonly #opened: SqlDriverAdapter[] = [];

  constructor(ownerUrl: string) {
    this.#inner = new PrismaPg({ connectionString: ownerUrl, max: 2 }, { onPoolError: () => undefined });
  }

  async connect(): Promise<SqlDriverAdapter> {
    const adapter = await this.#inner.connect();
    this.#opened.push(adapter);
    adapter.executeScript = async (script) => {
      try {
        await adapter.underlyingDriver().query(script);
      } catch (error) {
        this.scriptError = placed(error, script);
        throw error;
      }
    };
    return adapter;
  }

  /** The adapter's own would connect to the very database it is meant to spare; nothing here needs one. */
  async connectToShadowDb(): Promise<SqlDriverAdapter> {
    throw new MigrationError(
      "no shadow database is used here: the last migration's models are kept beside it",
    );
  }

  /** Ends every connection. */
  async close(): Promise<void> {
    await Promise.all(this.#opened.splice(0).map((adapter) => adapter.dispose()));
  }
}
