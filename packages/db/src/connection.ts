import { AsyncLocalStorage } from "node:async_hooks";
import pg from "pg";

/** The connection that a transaction runs on, for as long as it does. */
export interface Held {
  connection?: pg.PoolClient;
}

type Connected = Parameters<pg.Pool["connect"]>[0];

/** A pool that tells a transaction which of its connections it was given. */
export class HoldingPool extends pg.Pool {
  readonly #holding = new AsyncLocalStorage<Held>();

  /** Does what takes a connection out of this pool; the first one taken is held until it is given back. */
  hold<T>(work: (held: Held) => Promise<T>): Promise<T> {
    const held: Held = {};
    return this.#holding.run(held, work, held);
  }

  override connect(): Promise<pg.PoolClient>;
  override connect(callback: Connected): void;
  override connect(callback?: Connected): Promise<pg.PoolClient> | undefined {
    if (callback === undefined) return this.#taken();
    super.connect(callback);
    return undefined;
  }

  async #taken(): Promise<pg.PoolClient> {
    const connection = await super.connect();
    const held = this.#holding.getStore();
    if (held === undefined || held.connection !== undefined) return connection;
    held.connection = connection;
    const { release } = connection;
    connection.release = (destroy) => {
      // Whoever runs on it next may be of another club.
      delete held.connection;
      release(destroy);
    };
    return connection;
  }
}
