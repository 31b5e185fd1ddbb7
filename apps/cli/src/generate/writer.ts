import type pg from "pg";
import {
  CURRENT_VALUES,
  carKinds,
  copySql,
  drawSql,
  JOURNAL,
  putAside,
  putValuesAside,
  sharedKinds,
  snake,
} from "./copy-sql";
import type { Follower, PoolRows, Row } from "./pool";

/** Cars, or rows, of one statement. */
const BATCH = 5_000;

/** Whose cars are copied: those of another club, or the first ones of this club. */
export type Origin = "pattern" | "pool";

const inColumns = (row: Row) =>
  Object.fromEntries(Object.entries(row).map(([name, value]) => [snake(name), value]));

/** Writes one new club and counts its rows. */
export class Writer {
  rows = 1;
  modifications = 0;
  currentValues = 0;

  constructor(
    private readonly owner: pg.Client,
    private readonly clubId: string,
    private readonly seed: number,
  ) {}

  /** Copies what a club has once: series, specifications, its own characteristics. */
  async copyShared(patternId: string): Promise<void> {
    for (const kind of sharedKinds) await this.#run(copySql(kind, false), [patternId]);
  }

  /** Draws which car each of some new ones follows. */
  async draw(origin: Origin, clubId: string, first: number, last: number): Promise<readonly Follower[]> {
    await this.owner.query("DROP TABLE IF EXISTS drawn");
    await this.owner.query(
      "CREATE TEMP TABLE drawn (copy int PRIMARY KEY, car_id uuid, tail text) ON COMMIT DROP",
    );
    await this.owner.query(drawSql(origin), [clubId, this.seed, first, last]);
    await this.owner.query("ANALYZE drawn");
    const { rows } = await this.owner.query<Follower>(
      `SELECT copy, car_id AS "carId" FROM drawn ORDER BY copy LIMIT ${BATCH}`,
    );
    return rows;
  }

  /** Copies the cars that were drawn, with everything of theirs. */
  async copyCars(origin: Origin, clubId: string, first: number, last: number): Promise<void> {
    for (const kind of carKinds) await this.#putAside(`pattern_${snake(kind.name)}`, putAside(kind, clubId));
    const within = origin === "pool";
    if (within) await this.#putAside("pattern_current_value", putValuesAside(clubId));
    for (let start = first; start <= last; start += BATCH) {
      const span = [start, Math.min(last, start + BATCH - 1)];
      for (const kind of carKinds) {
        const written = await this.#run(copySql(kind, within), span);
        if (kind.name === "modification") this.modifications += written;
        if (!within) await this.#analyse(snake(kind.name));
      }
      if (within) this.currentValues += await this.#run(CURRENT_VALUES, span);
    }
  }

  /** Writes rows that were drawn. */
  async write(drawn: PoolRows): Promise<void> {
    for (const [table, rows] of drawn) {
      const names = [...new Set(rows.flatMap(Object.keys))];
      const columns = names.map((name) => `"${snake(name)}"`).join(", ");
      for (let start = 0; start < rows.length; start += BATCH) {
        await this.owner.query(
          `INSERT INTO "${table}" (club_id, ${columns})
           SELECT $1::uuid, ${columns} FROM json_populate_recordset(NULL::"${table}", $2::json)`,
          [this.clubId, JSON.stringify(rows.slice(start, start + BATCH).map(inColumns))],
        );
        if (start === 0) await this.#analyse(table);
      }
      this.rows += rows.length;
      if (table === "modification") this.modifications += rows.length;
      if (table === "current_value") this.currentValues += rows.length;
    }
  }

  /** Notes each car down in the journal. */
  async journal(): Promise<void> {
    this.rows += (await this.owner.query(JOURNAL, [this.clubId])).rowCount ?? 0;
  }

  async #putAside(table: string, sql: string): Promise<void> {
    await this.owner.query(`DROP TABLE IF EXISTS ${table}`);
    await this.owner.query(sql);
    await this.owner.query(`ANALYZE ${table}`);
  }

  /**
   * Tells the planner of the new club. Of one that is not in its statistics it takes any index that begins with the club for
   * as good as the primary key, and a foreign key's check then reads the whole club: hours instead of minutes.
   */
  async #analyse(table: string): Promise<void> {
    await this.owner.query(`ANALYZE "${table}"`);
  }

  async #run(sql: string, values: readonly unknown[]): Promise<number> {
    // PostgreSQL wants a type of every parameter, used or not.
    const { rowCount } = await this.owner.query(sql, [this.seed, this.clubId, ...values]);
    this.rows += rowCount ?? 0;
    return rowCount ?? 0;
  }
}
