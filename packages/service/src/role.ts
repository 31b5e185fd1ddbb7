import type { Role } from "@trunnion/db";
import { refused } from "@trunnion/register";
import type { Actor } from "./context";

/** Refuses with ROLE_NEEDED unless the actor has one of the roles. */
export function requireRole(actor: Actor, ...needed: readonly Role[]): void {
  if (needed.some((role) => actor.roles.includes(role))) return;
  throw refused("ROLE_NEEDED", { needed, has: actor.roles });
}
