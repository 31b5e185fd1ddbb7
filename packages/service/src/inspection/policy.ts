import type { Role } from "@trunnion/db";
import type { Actor } from "../context";

/** Who may look at a car at an event and decide on it; the entries' drivers are named to them. */
export const inspectors: readonly Role[] = ["scrutineer", "registrar", "fleetManager"];

export function mayInspect({ roles }: Actor): boolean {
  return inspectors.some((role) => roles.includes(role));
}
