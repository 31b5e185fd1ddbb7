import pg from "pg";
import { DEMO_PASSWORD, people } from "./demo/club";

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

/** True when no club is there yet. */
export async function isEmpty(ownerUrl: string): Promise<boolean> {
  return asOwner(ownerUrl, async (client) => {
    const { rows } = await client.query<{ some: boolean }>("SELECT EXISTS (SELECT FROM club) AS some");
    return rows[0]?.some === false;
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
