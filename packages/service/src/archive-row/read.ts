import type { ClubTables } from "@trunnion/db";
import { canonicalJson, type Field, type Kind, notArchivedColumns } from "@trunnion/register";
import { columnOf, isColumn, selectSql, tableOf } from "./policy";

/** Rows fetched at once. */
const ROWS = 2_000;

/** Columns of every table with PostgreSQL's type of each. */
export async function columnTypes(
  tables: ClubTables,
): Promise<ReadonlyMap<string, ReadonlyMap<string, string>>> {
  const rows = await tables.$queryRaw<{ table: string; column: string; type: string }[]>`
    SELECT c.relname::text AS table, a.attname::text AS column, format_type(a.atttypid, a.atttypmod) AS type
    FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND a.attnum > 0 AND NOT a.attisdropped
      AND a.attgenerated = ''`;
  const types = new Map<string, Map<string, string>>();
  for (const { table, column, type } of rows) {
    const columns = types.get(table) ?? new Map<string, string>();
    types.set(table, columns.set(column, type));
  }
  return types;
}

/** Columns that a kind has no field for, and fields it has no column for: an archive made so would lose something. */
export function unmatched(kind: Kind, types: ReadonlyMap<string, string> | undefined): readonly string[] {
  const fields = [...kind.fields.keys()].filter((name) => isColumn(kind, name)).map(columnOf);
  const columns = [...(types?.keys() ?? [])].filter(
    (column) => column !== "club_id" && notArchivedColumns[`${tableOf(kind)}.${column}`] === undefined,
  );
  return [
    ...columns.filter((column) => !fields.includes(column)),
    ...fields.filter((column) => !columns.includes(column)),
  ].map((column) => `${tableOf(kind)}.${column}`);
}

type Row = Record<string, unknown>;

/** Fields whose value has to be put in canonical form: numbers and what is nested. */
const isNested = ([, { type }]: readonly [string, Field]) => type === "json";

/** Gives a row of a kind as a canonical line, from what PostgreSQL wrote with names sorted already. */
function canonicalLine(kind: Kind): (line: string) => string {
  if ([...kind.fields].some(isNested)) return (line) => canonicalJson(JSON.parse(line));
  // ECMAScript's numbers, and its way to escape: the names are sorted as they came.
  return (line) => JSON.stringify(JSON.parse(line) as Row);
}

/**
 * A kind's rows of the scope's club as canonical lines without their ends, some thousand at a time, sorted as the archive
 * has them. Needs a transaction that sees one moment; one kind at a time.
 */
export async function* archiveLines(
  tables: ClubTables,
  kind: Kind,
  personalData: boolean,
): AsyncGenerator<readonly string[]> {
  const line = canonicalLine(kind);
  await tables.$executeRawUnsafe(
    `DECLARE archive_rows NO SCROLL CURSOR FOR ${selectSql(kind, personalData)}`,
  );
  for (;;) {
    const rows = await tables.$queryRawUnsafe<{ line: string }[]>(`FETCH ${ROWS} FROM archive_rows`);
    if (rows.length === 0) break;
    yield rows.map((row) => line(row.line));
    if (rows.length < ROWS) break;
  }
  await tables.$executeRawUnsafe("CLOSE archive_rows");
}
