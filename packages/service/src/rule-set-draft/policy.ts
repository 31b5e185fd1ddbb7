import type { Role } from "@trunnion/db";

/** Who may change what an organiser looks at. */
export const ruleKeepers: readonly Role[] = ["registrar", "scrutineer", "fleetManager"];

export function mayEditRules({ roles }: { readonly roles: readonly Role[] }): boolean {
  return ruleKeepers.some((role) => roles.includes(role));
}
