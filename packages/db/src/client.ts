import { PrismaPg } from "@prisma/adapter-pg";
import { PrismaClient } from "./generated/prisma/client";

/** Longest wait for a free connection, and the pool's size, per process. */
const POOL = { max: 10, connectionTimeoutMillis: 10_000 } as const;

/**
 * The clients behind the pools, kept once per process rather than once per module: a bundler may load this module
 * several times in one process, and a pool opened through one copy must be of use through the others.
 */
const shared = globalThis as typeof globalThis & { trunnionClients?: WeakMap<Database, PrismaClient> };
shared.trunnionClients ??= new WeakMap();
const clients = shared.trunnionClients;

/**
 * A pool of connections as the service role, which owns nothing.
 * It has no tables to query: only `@trunnion/db/gate` turns it into something that has.
 */
export class Database {
  constructor(serviceUrl: string) {
    const adapter = new PrismaPg({ connectionString: serviceUrl, ...POOL });
    clients.set(this, new PrismaClient({ adapter, errorFormat: "minimal" }));
  }

  /** Ends every connection; the object is of no use afterwards. */
  async close(): Promise<void> {
    await clientOf(this).$disconnect();
  }
}

/** The client behind a pool. Not exported from the package: an unscoped query must not compile elsewhere. */
export function clientOf(database: Database): PrismaClient {
  const client = clients.get(database);
  if (!client) throw new Error("this database was not opened here");
  return client;
}
