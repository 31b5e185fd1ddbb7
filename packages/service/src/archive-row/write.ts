import type { ClubTables } from "@trunnion/db";
import type { Kind } from "@trunnion/register";
import { breachOf, insertSql, linkSql, selfReferences, tableOf } from "./policy";
import type { columnTypes } from "./read";

/** One line of a file of rows, read and found to be what its kind must be. */
export interface ArchiveLine {
  /** From 1. */
  readonly number: number;
  readonly text: string;
  readonly row: Readonly<Record<string, unknown>>;
}

/** A row that the database turned away. */
export class RowRefused extends Error {
  override readonly name = "RowRefused";
  constructor(
    readonly line: number,
    readonly breach: string,
  ) {
    super(`line ${line}: ${breach}`);
  }
}

/** What the database says of a row that it turns away: its own code and words. */
interface RawFault {
  readonly code?: string;
  readonly message: string;
}

/** A link within a kind that waits until all its rows are there. */
interface Link {
  readonly line: number;
  readonly id: string;
  readonly other: string;
}

/** Links made in one statement. */
const LINKS = 1_000;

/**
 * Writes the rows of one kind in the owner's transaction of the club, in the order they come.
 *
 * @throws RowRefused naming the line that the database turned away
 */
export class RowWriter {
  readonly #links = new Map<string, Link[]>();
  readonly #insert: string;

  private constructor(
    private readonly tables: ClubTables,
    private readonly kind: Kind,
    types: ReadonlyMap<string, string>,
  ) {
    this.#insert = insertSql(kind, types);
    for (const name of selfReferences(kind)) this.#links.set(name, []);
  }

  /** @param types of every table's columns, by `columnTypes` */
  static of(tables: ClubTables, kind: Kind, types: Awaited<ReturnType<typeof columnTypes>>): RowWriter {
    return new RowWriter(tables, kind, types.get(tableOf(kind)) ?? new Map());
  }

  async write(lines: readonly ArchiveLine[]): Promise<void> {
    for (const [name, links] of this.#links) {
      for (const { number, row } of lines) {
        if (row[name] !== null) links.push({ line: number, id: String(row.id), other: String(row[name]) });
      }
    }
    await this.#attempt(
      lines,
      ({ number }) => number,
      (some) => this.tables.$executeRawUnsafe(this.#insert, `[${some.map(({ text }) => text).join(",")}]`),
    );
  }

  /**
   * After the last row of the kind. The planner is told of the rows: of a club that is in no statistics it takes any index that
   * begins with the club for as good as the primary key, and each row that points here would look through the whole club.
   */
  async finish(): Promise<void> {
    await this.#link();
    await this.tables.$executeRawUnsafe(`ANALYZE "${tableOf(this.kind)}"`);
  }

  async #link(): Promise<void> {
    for (const [name, links] of this.#links) {
      const sql = linkSql(this.kind, name);
      for (let start = 0; start < links.length; start += LINKS) {
        await this.#attempt(
          links.slice(start, start + LINKS),
          ({ line }) => line,
          (some) =>
            this.tables.$executeRawUnsafe(
              sql,
              some.map(({ id }) => id),
              some.map(({ other }) => other),
            ),
        );
      }
    }
  }

  /** All at once; where that fails, one by one, to find the line. */
  async #attempt<T>(
    items: readonly T[],
    lineOf: (item: T) => number,
    work: (some: readonly T[]) => Promise<unknown>,
  ): Promise<void> {
    if (items.length === 0) return;
    await this.tables.$executeRawUnsafe("SAVEPOINT archive_rows");
    try {
      await work(items);
    } catch (error) {
      await this.tables.$executeRawUnsafe("ROLLBACK TO SAVEPOINT archive_rows");
      const { code, message } = error as RawFault;
      const breach = breachOf(code, message);
      const [only] = items;
      if (breach === undefined || only === undefined) throw error;
      if (items.length === 1) throw new RowRefused(lineOf(only), breach);
      for (const item of items) await this.#attempt([item], lineOf, work);
      throw error;
    }
    await this.tables.$executeRawUnsafe("RELEASE SAVEPOINT archive_rows");
  }
}
