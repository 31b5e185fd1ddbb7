import { createHmac, randomBytes } from "node:crypto";
import pg from "pg";

/** The service role could not be made or granted its rights: what to do is in the message. */
export class ServiceRoleError extends Error {
  override name = "ServiceRoleError";
}

/** Rights of the service role per table; what is not named here gets all four. */
const NARROWER: Readonly<Record<string, string>> = {
  journal_entry: "SELECT, INSERT",
  printed_sheet: "SELECT, INSERT",
  club: "SELECT, UPDATE",
  _prisma_migrations: "",
};

function quoted(identifier: string): string {
  return `"${identifier.replaceAll('"', '""')}"`;
}

async function grantRights(client: pg.Client, role: string): Promise<void> {
  const { rows } = await client.query<{ tablename: string }>(
    "SELECT tablename FROM pg_tables WHERE schemaname = 'public' ORDER BY tablename",
  );
  const grants = rows.flatMap(({ tablename }) => {
    const rights = NARROWER[tablename] ?? "SELECT, INSERT, UPDATE, DELETE";
    const table = quoted(tablename);
    const revoke = `REVOKE ALL ON ${table} FROM ${quoted(role)}`;
    return rights === "" ? [revoke] : [revoke, `GRANT ${rights} ON ${table} TO ${quoted(role)}`];
  });
  const schema = `GRANT USAGE ON SCHEMA public TO ${quoted(role)}`;
  await client.query(["BEGIN", schema, ...grants, "COMMIT"].join(";\n"));
}

async function makeRole(client: pg.Client, role: string, password: string): Promise<void> {
  const { rowCount } = await client.query("SELECT FROM pg_roles WHERE rolname = $1", [role]);
  const verb = rowCount === 0 ? "CREATE" : "ALTER";
  // A role statement takes no parameters; the password is hex, so it cannot end the literal.
  await client.query(
    `${verb} ROLE ${quoted(role)} LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS PASSWORD '${password}'`,
  );
}

/**
 * Makes sure that the service's own role exists, owns nothing, and has just the rights it needs; idempotent.
 * The role is named after the database; its password follows from the owner's, so that several
 * servers on one database agree without sharing a file.
 *
 * @param ownerUrl connection of the role that owns the tables
 * @param givenServiceUrl a service connection the administrator made by hand; its role only gets the rights
 * @returns the URL to connect the service with
 * @throws ServiceRoleError when the owner may not make roles
 */
export async function prepareServiceRole(ownerUrl: string, givenServiceUrl?: string): Promise<string> {
  const owner = new URL(ownerUrl);
  const database = decodeURIComponent(owner.pathname.slice(1));
  const service = new URL(givenServiceUrl ?? ownerUrl);
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    if (givenServiceUrl === undefined) {
      const role = `${database}_service`;
      // An owner without a password is let in by other means (peer, trust): nothing to derive from.
      const key = owner.password === "" ? randomBytes(32) : owner.password;
      const password = createHmac("sha256", key).update(`${role} of trunnion`).digest("hex");
      await makeRole(client, role, password);
      service.username = encodeURIComponent(role);
      service.password = password;
    }
    await grantRights(client, decodeURIComponent(service.username));
    return service.toString();
  } catch (error) {
    if ((error as { code?: string }).code !== "42501") throw error;
    throw new ServiceRoleError(
      `the role ${decodeURIComponent(owner.username)} of DATABASE_URL may not make or grant a service role (${(error as Error).message}). ` +
        "Let an administrator run CREATE ROLE … LOGIN NOBYPASSRLS, and give its connection in TRUNNION_SERVICE_URL.",
    );
  } finally {
    await client.end();
  }
}
