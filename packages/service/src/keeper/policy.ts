import type { Context } from "../context";

/** Who may read personal data of every keeper; others see none. */
export function maySeeKeepers({ actor }: Context): boolean {
  return actor.roles.includes("registrar") || actor.roles.includes("fleetManager");
}
