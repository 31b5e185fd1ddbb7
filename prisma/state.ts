import pg from "pg";
import { clubs, DEMO_PASSWORD, people } from "./demo/club";

// Apart from the seed itself, which brings the whole service along: every start asks these, few starts seed.

/** Runs work as the role that owns the tables. */
export async function asOwner<T>(ownerUrl: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

/** What the journal of a demo club says once the whole demo is there. */
export const DEMO_FILLED = "demo.filled";

/**
 * True where the demo belongs and is not there whole: no club at all, or those of a demo whose filling was cut short.
 * A database with any club of its own is left alone.
 */
export async function wantsDemo(ownerUrl: string): Promise<boolean> {
  const slugs = clubs.map(({ slug }) => slug);
  return asOwner(ownerUrl, async (client) => {
    const { rows } = await client.query<{ wanted: boolean }>(
      `SELECT NOT EXISTS (SELECT FROM club WHERE slug <> ALL ($1))
         AND (SELECT count(DISTINCT c.id) FROM club c JOIN journal_entry j ON j.club_id = c.id AND j.action = $2)
           < cardinality($1) AS wanted`,
      [slugs, DEMO_FILLED],
    );
    return rows[0]?.wanted === true;
  });
}

/** Who can be tried in the demo. */
export interface DemoSignIns {
  readonly password: string;
  readonly people: readonly { readonly email: string; readonly as: string }[];
}

const roleNames = {
  registrar: "registrar",
  owner: "owner",
  scrutineer: "scrutineer",
  fleetManager: "fleet manager",
};

/**
 * The demo's sign-ins, for whoever has just started it; nothing where the demo's accounts are not
 * (a club of one's own has no password that is told).
 */
export async function demoSignIns(ownerUrl: string): Promise<DemoSignIns | undefined> {
  const wanted = people.map(({ email }) => email);
  const there = await asOwner(ownerUrl, async (client) => {
    const { rows } = await client.query<{ email: string }>("SELECT email FROM person WHERE email = ANY($1)", [
      wanted,
    ]);
    return new Set(rows.map(({ email }) => email));
  });
  const shown = people.filter(({ email }) => there.has(email));
  if (shown.length === 0) return undefined;
  const told = shown.map(({ email, roles }) => {
    const names = new Set(Object.values(roles).flatMap((given) => given.map((role) => roleNames[role])));
    return { email, as: [...names].join(", ") };
  });
  return { password: DEMO_PASSWORD, people: told };
}
