import type { ClubTables } from "@trunnion/db";
import type { Kind } from "@trunnion/register";
import { type ArchiveLine, LEFT_OUT_DOMAIN } from "../archive-row";

interface Known {
  readonly id: string;
  readonly email: string;
}

/**
 * People behind the members of an archive that is read back. Somebody whose id or address is known here is that person;
 * everybody else gets an account without a password.
 */
export class Members {
  /** Accounts made. */
  made = 0;
  /** Members who had an account here already. */
  known = 0;
  /** Ids of the archive that are another one's here. */
  readonly #here = new Map<string, string>();

  constructor(private readonly tables: ClubTables) {}

  /** Sees that there is an account for each member of some lines. */
  async settle(lines: readonly ArchiveLine[]): Promise<void> {
    const wanted = lines.map(({ row }) => ({
      id: String(row.personId),
      name: row.name === null ? "name left out" : String(row.name),
      email:
        row.email === null ? `${String(row.personId)}@${LEFT_OUT_DOMAIN}` : String(row.email).toLowerCase(),
    }));
    const there = await this.tables.$queryRaw<Known[]>`
      SELECT id::text, email FROM person
      WHERE id = ANY(${wanted.map(({ id }) => id)}::uuid[]) OR email = ANY(${wanted.map(({ email }) => email)})`;
    const ids = new Set(there.map(({ id }) => id));
    const byEmail = new Map(there.map(({ email, id }) => [email, id]));
    const missing = wanted.filter(({ id, email }) => !ids.has(id) && !byEmail.has(email));
    for (const { id, email } of wanted) {
      const other = byEmail.get(email);
      if (!ids.has(id) && other !== undefined) this.#here.set(id, other);
    }
    this.made += missing.length;
    this.known += wanted.length - missing.length;
    await this.tables.$executeRawUnsafe(
      `INSERT INTO person (id, name, email) SELECT id, name, email
       FROM json_to_recordset($1::json) AS r(id uuid, name text, email text)
       ON CONFLICT DO NOTHING`,
      JSON.stringify(missing),
    );
  }

  /** The same lines, pointing to the accounts here. The journal's stay: their hashes cover who did it. */
  pointed(kind: Kind, lines: readonly ArchiveLine[]): readonly ArchiveLine[] {
    const fields = [...kind.fields].flatMap(([name, { person }]) => (person ? [name] : []));
    if (this.#here.size === 0 || kind.name === "journalEntry" || fields.length === 0) return lines;
    return lines.map((line) => {
      const moved = fields.flatMap((name) => {
        const other = this.#here.get(String(line.row[name]));
        return other === undefined ? [] : [[name, other] as const];
      });
      if (moved.length === 0) return line;
      const row = { ...line.row, ...Object.fromEntries(moved) };
      return { number: line.number, row, text: JSON.stringify(row) };
    });
  }
}
