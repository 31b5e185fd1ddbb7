import { PrismaPg } from "@prisma/adapter-pg";
import { HoldingPool } from "./connection";
import { type Prisma, PrismaClient } from "./generated/prisma/client";
import { type RawStatements, rawStatements } from "./raw";
import type { Tables } from "./scope";

/** Longest wait for a free connection, and the pool's size, per process. */
const POOL = { max: 10, connectionTimeoutMillis: 10_000 } as const;

interface Behind {
  readonly pool: HoldingPool;
  readonly client: PrismaClient;
}

/**
 * The clients and the pools behind them, kept once per process rather than once per module: a bundler may load this module
 * several times in one process, and a pool opened through one copy must be of use through the others.
 */
const shared = globalThis as typeof globalThis & { trunnionClients?: WeakMap<Database, Behind> };
shared.trunnionClients ??= new WeakMap();
const clients = shared.trunnionClients;

/**
 * A pool of connections as the service role, which owns nothing.
 * It has no tables to query: only `@trunnion/db/gate` turns it into something that has.
 */
export class Database {
  constructor(serviceUrl: string) {
    const pool = new HoldingPool({ connectionString: serviceUrl, ...POOL });
    const adapter = new PrismaPg(pool, { disposeExternalPool: true });
    clients.set(this, { pool, client: new PrismaClient({ adapter, errorFormat: "minimal" }) });
  }

  /** Ends every connection; the object is of no use afterwards. */
  async close(): Promise<void> {
    await clientOf(this).$disconnect();
  }
}

function behind(database: Database): Behind {
  const known = clients.get(database);
  if (!known) throw new Error("this database was not opened here");
  return known;
}

/** The client behind a pool. Not exported from the package: an unscoped query must not compile elsewhere. */
export const clientOf = (database: Database): PrismaClient => behind(database).client;

interface Limits {
  /** Milliseconds: waiting for a connection, and the whole transaction. */
  readonly maxWait: number;
  readonly timeout: number;
  readonly isolationLevel?: Prisma.TransactionIsolationLevel;
}

/** Works inside one transaction. Not exported from the package: it is of no club yet. */
export function transaction<T>(
  database: Database,
  work: (tables: Tables) => Promise<T>,
  limits: Limits,
): Promise<T> {
  const { pool, client } = behind(database);
  return pool.hold((held) =>
    client.$transaction((tx) => {
      const raw = rawStatements(held);
      const isRaw = (name: string | symbol): name is keyof RawStatements => Object.hasOwn(raw, name);
      const tables = new Proxy(tx, { get: (of, name) => (isRaw(name) ? raw[name] : Reflect.get(of, name)) });
      return work(tables as unknown as Tables);
    }, limits),
  );
}
