import type { Field, Kind } from "@trunnion/register";

/** Domain of the addresses of people whose address was left out: names nobody, by RFC 2606. */
export const LEFT_OUT_DOMAIN = "left-out.invalid";

const quoted = (name: string) => `"${name.replaceAll('"', '""')}"`;
const snake = (name: string) => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

/** Table that a kind's rows are in. */
export function tableOf(kind: Kind): string {
  return kind.name === "member" ? "membership" : snake(kind.name);
}

/** Column that a field is in. */
export const columnOf = snake;

const ofPerson = (column: string) => `CASE WHEN p.email NOT LIKE '%@${LEFT_OUT_DOMAIN}' THEN p.${column} END`;

/** Fields that are not simply a column of the kind's table. */
const elsewhere: Readonly<Record<string, string>> = {
  "member.name": ofPerson("name"),
  "member.email": ofPerson("email"),
};

function tablesOf(kind: Kind): string {
  const table = `FROM ${quoted(tableOf(kind))} t`;
  if (kind.name === "member") return `${table} JOIN person p ON p.id = t.person_id`;
  // Clubs themselves stand outside row-level security.
  if (kind.name === "club") return `${table} WHERE t.id = current_setting('trunnion.club')::uuid`;
  return table;
}

/** True for a field that the kind's own table has a column for. */
export const isColumn = (kind: Kind, name: string): boolean => !(`${kind.name}.${name}` in elsewhere);

function expressionOf(kind: Kind, name: string, field: Field, personalData: boolean): string {
  if (field.personal === "emptied" && !personalData) return "NULL::text";
  const column = elsewhere[`${kind.name}.${name}`] ?? `t.${quoted(columnOf(name))}`;
  if (field.personal !== undefined && field.personal !== "emptied" && !personalData) {
    return `jsonb_set(${column}, '{${field.personal.path.join(",")}}', '""', false)`;
  }
  if (field.type === "day") return `to_char(${column}, 'YYYY-MM-DD')`;
  if (field.type === "instant")
    return `to_char(${column} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
  return column;
}

function orderOf(kind: Kind): string {
  return kind.order
    .map((name) => {
      const column = `t.${quoted(columnOf(name))}`;
      return kind.fields.get(name)?.type === "text" ? `${column} COLLATE "C"` : column;
    })
    .join(", ");
}

/** The query that gives a kind's rows, one JSON object a row in a column `line`, names and rows sorted as the archive has them. */
export function selectSql(kind: Kind, personalData: boolean): string {
  const columns = [...kind.fields].map(
    ([name, field]) => `${expressionOf(kind, name, field, personalData)} AS ${quoted(name)}`,
  );
  return `SELECT row_to_json(r)::text AS line FROM (SELECT ${columns.join(", ")} ${tablesOf(kind)} ORDER BY ${orderOf(kind)}) r`;
}

/** Fields that name a row of the same kind: filled in after all rows of the kind are there. */
export function selfReferences(kind: Kind): readonly string[] {
  return [...kind.fields].flatMap(([name, field]) => (field.refersTo === kind.name ? [name] : []));
}

/**
 * The statement that writes an array of lines ($1, JSON) to a kind's table; the club is the transaction's.
 *
 * @param types PostgreSQL's type of each column of the table
 */
export function insertSql(kind: Kind, types: ReadonlyMap<string, string>): string {
  const later = selfReferences(kind);
  const names = [...kind.fields.keys()].filter((name) => isColumn(kind, name) && !later.includes(name));
  const typeOf = (name: string) => {
    const type = types.get(columnOf(name));
    if (type === undefined) throw new Error(`${tableOf(kind)} has no column for ${name}`);
    return type;
  };
  const columns = names.map((name) => quoted(columnOf(name))).join(", ");
  const read = names.map((name) => `${quoted(name)} ${typeOf(name)}`).join(", ");
  return `INSERT INTO ${quoted(tableOf(kind))} (${columns}) SELECT ${names.map(quoted).join(", ")} FROM json_to_recordset($1::json) AS r(${read})`;
}

/** The statement that fills in references within a kind: $1 ids, $2 what each refers to. */
export function linkSql(kind: Kind, name: string): string {
  return `UPDATE ${quoted(tableOf(kind))} t SET ${quoted(columnOf(name))} = v.other
    FROM unnest($1::uuid[], $2::uuid[]) AS v(id, other)
    WHERE t.club_id = current_setting('trunnion.club')::uuid AND t.id = v.id`;
}

/** What a row that the database turns away breaks, in words; nothing for a fault that is not the row's. */
export function breachOf(code: string | undefined, detail: string): string | undefined {
  const breaches: Readonly<Record<string, string>> = {
    "23503": "it refers to a row that is not in the archive",
    "23505": "it stands there twice",
    "23514": "its fields contradict each other",
    "23502": "a field is empty that may not be",
    "23000": "the journal's chain does not hold there",
    "22003": "a number is larger than any that is kept",
    "22P02": "a field cannot be read",
    "22P05": "a text holds a character that is kept nowhere",
    "22007": "a date cannot be read",
    "22008": "a date lies outside the calendar that is kept",
  };
  const breach = code === undefined ? undefined : breaches[code];
  return breach === undefined ? undefined : `${breach} (${detail})`;
}
