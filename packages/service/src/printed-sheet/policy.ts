import type { Role } from "@trunnion/db";
import type { Actor } from "../context";

/** Who may print the sheets of an event: they carry every entrant's name. */
export const printers: readonly Role[] = ["scrutineer", "registrar", "fleetManager"];

export function mayPrint({ roles }: Actor): boolean {
  return printers.some((role) => roles.includes(role));
}
