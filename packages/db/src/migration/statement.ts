import { MigrationError } from "./error";
import { type Described, describe } from "./model";

function quoted(identifier: string): string {
  return `"${identifier.replaceAll('"', '""')}"`;
}

function literal(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}

function key({ kind, name, column }: Described): string {
  return `${kind} ${name}.${column}`;
}

function commentStatement({ kind, name, column, comment }: Described): string {
  const target = kind === "column" ? `${quoted(name)}.${quoted(column)}` : quoted(name);
  return `COMMENT ON ${kind.toUpperCase()} ${target} IS ${literal(comment)};`;
}

/**
 * `COMMENT ON` for every doc comment that is new or changed.
 *
 * @throws MigrationError naming each table, column and type that has none
 */
export function commentStatements(before: string, after: string): string[] {
  const wanted = describe(after);
  const silent = wanted.filter(({ comment }) => comment === "");
  if (silent.length > 0) {
    const names = silent.map(({ kind, name, column }) => `${kind} ${name}${column && `.${column}`}`);
    throw new MigrationError(
      `every table, column and enumeration needs a /// comment; none on: ${names.join(", ")}`,
    );
  }
  const had = new Map(describe(before).map((described) => [key(described), described.comment]));
  return wanted.filter((described) => had.get(key(described)) !== described.comment).map(commentStatement);
}

function clubTables(source: string): string[] {
  return describe(source)
    .filter(({ column }) => column === "club_id")
    .map(({ name }) => name);
}

/** Row-level security for every table that has come to carry a club: its rows are that club's alone. */
export function securityStatements(before: string, after: string): string[] {
  const had = new Set(clubTables(before));
  const own = "club_id = NULLIF(current_setting('trunnion.club', true), '')::uuid";
  return clubTables(after)
    .filter((table) => !had.has(table))
    .flatMap((table) => [
      `ALTER TABLE ${quoted(table)} ENABLE ROW LEVEL SECURITY;`,
      `CREATE POLICY club_isolation ON ${quoted(table)} USING (${own}) WITH CHECK (${own});`,
    ]);
}
