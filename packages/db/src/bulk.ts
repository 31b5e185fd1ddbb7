import { setImmediate } from "node:timers/promises";
import type { ClubTables } from "./scope";

/** Rows per statement: each column is one parameter, so PostgreSQL's limit of parameters does not matter. */
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

/** PostgreSQL's type of each column, by table: the schema does not change while the program runs. */
const columnTypes = new Map<string, Promise<ReadonlyMap<string, string>>>();

function typesOf(tables: ClubTables, table: string): Promise<ReadonlyMap<string, string>> {
  const known = columnTypes.get(table);
  if (known) return known;
  const asked = tables
    .$queryRawUnsafe<{ name: string; type: string }[]>(
      `SELECT attname::text AS name, format_type(atttypid, atttypmod) AS type FROM pg_attribute
       WHERE attrelid = $1::regclass AND attnum > 0 AND NOT attisdropped`,
      quoted(table),
    )
    .then((rows) => new Map(rows.map(({ name, type }) => [name, type])));
  columnTypes.set(table, asked);
  // A question that failed is asked again.
  asked.catch(() => columnTypes.delete(table));
  return asked;
}

/** A value in PostgreSQL's text form; JSON as JSON. */
function textOf(value: unknown, type: string): string {
  if (type.startsWith("json")) return JSON.stringify(value);
  if (Array.isArray(value)) return arrayOf(value, type.slice(0, -2));
  return value instanceof Date ? value.toISOString() : String(value);
}

/** PostgreSQL's text form of an array: only what is quoted may hold anything, and there only `"` and `\\` are special. */
function arrayOf(values: readonly unknown[], type: string): string {
  const elements = values.map((value) => {
    if (value === null || value === undefined) return "NULL";
    if (typeof value === "number" && !type.startsWith("json")) return String(value);
    return `"${textOf(value, type).replace(/["\\]/g, "\\$&")}"`;
  });
  return `{${elements.join(",")}}`;
}

/** Rows as one parameter a column. */
interface Given {
  /** A table expression named `given`, its columns named as the table's. */
  readonly from: string;
  /** Those columns of it, in the order of the fields. */
  readonly selected: string;
  parametersOf(rows: readonly object[]): readonly string[];
}

/**
 * Rows of some fields as a table inside a statement. Arrays of PostgreSQL's own text form cost it less to read than JSON,
 * which has to be looked through for every column, and cost less to write here.
 */
function givenBy(fields: readonly string[], types: ReadonlyMap<string, string>): Given {
  const columns = fields.map((field) => {
    const type = types.get(snake(field));
    if (type === undefined) throw new Error(`not a column: ${field}`);
    return { field, name: quoted(field), type };
  });
  // An array of arrays would be taken apart whole: such a column goes as text.
  const isArray = (type: string) => type.endsWith("[]");
  const arrays = columns.map(({ type }, index) => `$${index + 1}::${isArray(type) ? "text" : type}[]`);
  return {
    from: `unnest(${arrays.join(", ")}) AS given(${columns.map(({ name }) => name).join(", ")})`,
    selected: columns.map(({ name, type }) => `given.${name}${isArray(type) ? `::${type}` : ""}`).join(", "),
    parametersOf: (rows) =>
      columns.map(({ field, type }) =>
        arrayOf(
          rows.map((row) => (row as Readonly<Record<string, unknown>>)[field]),
          type,
        ),
      ),
  };
}

/** Makes an insert of many rows ready, without asking the database to do it yet; as {@link insertRows} otherwise. */
async function preparedInsert(
  tables: ClubTables,
  table: string,
  rows: readonly object[],
): Promise<() => Promise<void>> {
  const fields = columnsOf(rows);
  const given = givenBy(fields, await typesOf(tables, table));
  const sql = `INSERT INTO ${quoted(table)} (${fields.map(quoted).join(", ")}) SELECT ${given.selected} FROM ${given.from}`;
  const starts = Array.from({ length: Math.ceil(rows.length / CHUNK) }, (_, index) => index * CHUNK);
  const blocks = starts.map((start) => given.parametersOf(rows.slice(start, start + CHUNK)));
  return async () => {
    for (const block of blocks) await tables.$executeRawUnsafe(sql, ...block);
  };
}

/**
 * Inserts many rows of one table in the scope's transaction; the club and other defaults are the database's.
 * The ORM's own way builds a tree per value and takes ten times as long, which a register of 10,000 cars feels.
 *
 * @param table name of the table in the database
 * @param rows by the names the schema gives its fields; every optional field either in all rows or meant to be NULL
 */
export async function insertRows(tables: ClubTables, table: string, rows: readonly object[]): Promise<void> {
  if (rows.length === 0) return;
  const insert = await preparedInsert(tables, table, rows);
  await insert();
}

/** The same for several tables, in their order: while the database writes one, the next is made ready. */
export async function insertTables(
  tables: ClubTables,
  all: readonly (readonly [table: string, rows: readonly object[]])[],
): Promise<void> {
  let writing = Promise.resolve();
  for (const [table, rows] of all) {
    if (rows.length === 0) continue;
    const insert = await preparedInsert(tables, table, rows);
    await writing;
    writing = insert();
    // Awaited in the next round or at the end; until then nobody else should hear of its failing.
    writing.catch(() => undefined);
    await setImmediate();
  }
  await writing;
}

/** Rows that belong to others, and what tells them apart. */
export interface OwnedRows {
  /** Field that names the owner. */
  readonly owner: string;
  readonly owners: readonly string[];
  /** Fields that, with the club, are the table's primary key. */
  readonly key: readonly string[];
  /** Every row that the owners shall have, each with the same fields. */
  readonly rows: readonly object[];
}

/**
 * Makes the rows of some owners be those given, in the scope's transaction: adds what lacks, changes what differs, takes
 * away what is left over. A row that is as it should be is not written, so what was right already costs a comparison.
 *
 * @returns rows that were added, changed or taken away
 */
export async function replaceRows(
  tables: ClubTables,
  table: string,
  { owner, owners, key, rows }: OwnedRows,
): Promise<number> {
  const target = quoted(table);
  const ids = arrayOf(owners, "uuid");
  const fields = columnsOf(rows);
  if (fields.length === 0) {
    return tables.$executeRawUnsafe(`DELETE FROM ${target} WHERE ${quoted(owner)} = ANY($1::uuid[])`, ids);
  }
  const given = givenBy(fields, await typesOf(tables, table));
  const of = (alias: string, names: readonly string[]) =>
    names.map((name) => `${alias}.${quoted(name)}`).join(", ");
  const bare = (names: readonly string[]) => names.map(quoted).join(", ");
  const others = fields.filter((field) => !key.includes(field));
  const owned = `${quoted(owner)} = ANY($${fields.length + 1}::uuid[])`;
  const [row] = await tables.$queryRawUnsafe<{ written: number }[]>(
    `WITH given AS MATERIALIZED (SELECT ${given.selected} FROM ${given.from}),
      held AS MATERIALIZED (SELECT * FROM ${target} WHERE ${owned}),
      gone AS (DELETE FROM ${target} WHERE ${owned} AND (${bare(key)}) NOT IN (SELECT ${bare(key)} FROM given) RETURNING 1),
      put AS (INSERT INTO ${target} (${bare(fields)})
        SELECT ${of("given", fields)} FROM given LEFT JOIN held USING (${bare(key)})
        WHERE held.club_id IS NULL OR (${of("given", others)}) IS DISTINCT FROM (${of("held", others)})
        ON CONFLICT (club_id, ${bare(key)}) DO UPDATE SET (${bare(others)}) = ROW(${of("excluded", others)})
        RETURNING 1)
      SELECT ((SELECT count(*) FROM gone) + (SELECT count(*) FROM put))::int AS written`,
    ...given.parametersOf(rows),
    ids,
  );
  return row?.written ?? 0;
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
  if (rows.length === 0) return;
  const target = quoted(table);
  const types = await typesOf(tables, table);
  for (const group of byColumns(rows)) {
    const fields = columnsOf(group).filter((name) => name !== "id");
    if (fields.length === 0) continue;
    const given = givenBy(["id", ...fields], types);
    const set = fields.map((field) => `${quoted(field)} = changed.${quoted(field)}`).join(", ");
    const sql = `UPDATE ${target} SET ${set} FROM (SELECT ${given.selected} FROM ${given.from}) AS changed WHERE ${target}.id = changed.id`;
    for (let start = 0; start < group.length; start += CHUNK) {
      await tables.$executeRawUnsafe(sql, ...given.parametersOf(group.slice(start, start + CHUNK)));
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
