import type { Context } from "../context";

/** Who may read personal data of every keeper; others see only what is said of themselves. */
export function maySeeKeepers({ actor }: Context): boolean {
  return actor.roles.includes("registrar") || actor.roles.includes("fleetManager");
}

/** Particulars of a keeper that are personal data. */
export const personalParts = ["name", "address", "email", "phone"] as const;

/**
 * A row of a keeper, as an earlier reading-in kept it for undoing, without the person: so that undoing brings nothing
 * back that was erased. Names of columns may be the schema's or the database's.
 */
export function withoutPerson(before: unknown, erasedAt: Date): Readonly<Record<string, unknown>> {
  const row = typeof before === "object" && before !== null ? (before as Record<string, unknown>) : {};
  const personal = new Set<string>([...personalParts, "membershipId", "membership_id"]);
  const kept = Object.entries(row).map(([name, part]) => [name, personal.has(name) ? null : part] as const);
  const erased = "erased_at" in row ? "erased_at" : "erasedAt";
  return { ...Object.fromEntries(kept), [erased]: erasedAt.toISOString() };
}
