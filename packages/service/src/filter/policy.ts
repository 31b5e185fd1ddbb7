import { refused } from "@trunnion/register";
import type { Context } from "../context";

/** Filters one person may keep in a club. */
export const filterLimit = 100;

/** Who may rename, unshare and take away what another shared with the club. */
export function mayTidyShared({ actor }: Context): boolean {
  return actor.roles.includes("registrar") || actor.roles.includes("fleetManager");
}

/** The person whose filters these are; whoever runs commands has none. */
export function requirePerson({ actor }: Context): string {
  if (actor.personId === null) throw refused("NOT_SIGNED_IN", {});
  return actor.personId;
}
