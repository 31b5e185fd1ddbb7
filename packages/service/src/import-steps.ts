import { columnsNow, insertRows, type RowUpdate, updateRows } from "@trunnion/db";
import type { Context } from "./context";

/** One row that a reading-in wrote, so that it can be taken back. */
export interface Step {
  readonly carId: string;
  /** Table, by the name the schema gives its model. */
  readonly table: string;
  readonly rowId: string;
  /** The columns that were changed, as they stood; nothing when the row was added. */
  readonly before?: Readonly<Record<string, unknown>>;
}

interface Change {
  readonly carId: string;
  readonly table: string;
  readonly row: RowUpdate;
}

/** Changes to rows that stand, and what is needed to take back everything a reading-in writes. */
export class Steps {
  private readonly added: Step[] = [];
  private readonly changes: Change[] = [];

  /** A row was, or will be, added; with a car everything under it. */
  add(carId: string, table: string, rowId: string): void {
    this.added.push({ carId, table, rowId });
  }

  /** Some columns of a row are to be changed. */
  change(carId: string, table: string, row: RowUpdate): void {
    if (Object.keys(row).length > 1) this.changes.push({ carId, table, row });
  }

  /**
   * Changes the rows and keeps what they were, in the context's transaction.
   *
   * @param from steps the run has already
   * @returns how many it has then
   */
  async write({ db }: Context, runId: string, from: number): Promise<number> {
    const changed: Step[] = [];
    for (const table of new Set(this.changes.map((change) => change.table))) {
      const here = this.changes.filter((change) => change.table === table);
      const fields = [...new Set(here.flatMap(({ row }) => Object.keys(row)))].filter(
        (name) => name !== "id",
      );
      const ids = here.map(({ row }) => row.id);
      const held = await columnsNow(db, table, ids, fields);
      for (const { carId, row } of here) {
        const before = Object.entries(held.get(row.id) ?? {}).filter(([name]) => name in row);
        changed.push({ carId, table, rowId: row.id, before: Object.fromEntries(before) });
      }
      await updateRows(
        db,
        table,
        here.map(({ row }) => row),
      );
    }
    const steps = [...changed, ...this.added];
    await insertRows(
      db,
      "importStep",
      steps.map((step, index) => ({ ...step, runId, ordinal: from + index + 1 })),
    );
    return from + steps.length;
  }
}
