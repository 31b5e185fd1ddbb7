import type { ClubTables } from "./scope";

/** Rows per statement: each is one parameter of JSON, so PostgreSQL's limit of parameters does not matter. */
const CHUNK = 2_000;

/** Names of columns by those of fields: there are few, and millions of rows ask. */
const columnNames = new Map<string, string>();

function snake(name: string): string {
  const known = columnNames.get(name);
  if (known !== undefined) return known;
  const made = name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  columnNames.set(name, made);
  return made;
}

function quoted(name: string): string {
  const column = snake(name);
  if (!/^[a-z][a-z0-9_]*$/.test(column)) throw new Error(`not a column: ${name}`);
  return `"${column}"`;
}

/** Columns any row names; a row that lacks one gets NULL there, and columns no row names get their default. */
function columnsOf(rows: readonly object[]): readonly string[] {
  const names = new Set<string>();
  for (const row of rows) for (const name in row) names.add(name);
  return [...names];
}

function asJson(rows: readonly object[]): string {
  return JSON.stringify(
    rows.map((row) => {
      const columns: Record<string, unknown> = {};
      for (const [name, value] of Object.entries(row)) columns[snake(name)] = value;
      return columns;
    }),
  );
}

/**
 * Inserts many rows of one table in the scope's transaction; the club and other defaults are the database's.
 * The ORM's own way builds a tree per value and takes ten times as long, which a register of 10,000 cars feels.
 *
 * @param table name of the table in the database
 * @param rows by the names the schema gives its fields; every optional field either in all rows or meant to be NULL
 */
export async function insertRows(tables: ClubTables, table: string, rows: readonly object[]): Promise<void> {
  const target = quoted(table);
  const columns = columnsOf(rows).map(quoted).join(", ");
  for (let start = 0; start < rows.length; start += CHUNK) {
    await tables.$executeRawUnsafe(
      `INSERT INTO ${target} (${columns}) SELECT ${columns} FROM json_populate_recordset(NULL::${target}, $1::json)`,
      asJson(rows.slice(start, start + CHUNK)),
    );
  }
}

/** A row to change: its id, and the columns to set by the names the schema gives its fields. */
export interface RowUpdate {
  readonly id: string;
  readonly [field: string]: unknown;
}

/** Rows that set the same columns, in the order they were given. */
function byColumns(rows: readonly RowUpdate[]): readonly (readonly RowUpdate[])[] {
  const groups = new Map<string, RowUpdate[]>();
  for (const row of rows) {
    const key = Object.keys(row).sort().join(" ");
    const group = groups.get(key) ?? [];
    group.push(row);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** Changes many rows of one table by their ids in the scope's transaction, one statement for all that set the same columns. */
export async function updateRows(
  tables: ClubTables,
  table: string,
  rows: readonly RowUpdate[],
): Promise<void> {
  const target = quoted(table);
  for (const group of byColumns(rows)) {
    const columns = columnsOf(group)
      .filter((name) => name !== "id")
      .map(quoted);
    if (columns.length === 0) continue;
    const set = columns.map((column) => `${column} = given.${column}`).join(", ");
    for (let start = 0; start < group.length; start += CHUNK) {
      await tables.$executeRawUnsafe(
        `UPDATE ${target} SET ${set} FROM json_populate_recordset(NULL::${target}, $1::json) AS given WHERE ${target}.id = given.id`,
        asJson(group.slice(start, start + CHUNK)),
      );
    }
  }
}

/**
 * Some columns of rows as they stand, by their ids, by the names the schema gives its fields; dates and times as
 * PostgreSQL writes them in JSON, so that {@link updateRows} puts them back to the letter.
 */
export async function columnsNow(
  tables: ClubTables,
  table: string,
  ids: readonly string[],
  fields: readonly string[],
): Promise<ReadonlyMap<string, Readonly<Record<string, unknown>>>> {
  const pairs = fields.map((field) => `'${field}', ${quoted(field)}`).join(", ");
  const rows = await tables.$queryRawUnsafe<{ id: string; held: Record<string, unknown> }[]>(
    `SELECT id::text, jsonb_build_object(${pairs}) AS held FROM ${quoted(table)} WHERE id = ANY($1::uuid[])`,
    ids,
  );
  return new Map(rows.map(({ id, held }) => [id, held]));
}
