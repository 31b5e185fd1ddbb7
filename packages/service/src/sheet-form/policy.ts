import type { Role } from "@trunnion/db";

/** Who may turn a filled-in sheet into findings: who may inspect. */
export const formTakers: readonly Role[] = ["scrutineer", "registrar", "fleetManager"];
