import type { Database, Role } from "@trunnion/db";
import { listClubs as allClubs, answers, membershipsOf } from "@trunnion/db/gate";

/** A club somebody belongs to. */
export interface MyClub {
  readonly slug: string;
  readonly name: string;
  readonly kind: "ownersClub" | "fleet";
  readonly roles: readonly Role[];
}

/** The clubs of a signed-in person, by name. */
export async function myClubs(database: Database, personId: string): Promise<readonly MyClub[]> {
  const memberships = await membershipsOf(database, personId);
  return memberships.map(({ club: { slug, name, kind }, roles }) => ({ slug, name, kind, roles }));
}

/** Short names of every club on this database: for commands, which run for all of them. */
export async function listClubs(database: Database): Promise<readonly string[]> {
  return (await allClubs(database)).map(({ slug }) => slug);
}

/** True when the service can answer from its database. */
export const isHealthy = answers;
