import { isAbsolute, join } from "node:path";
import { fileURLToPath } from "node:url";
import { env } from "./env";

/** The folder that everything is in. */
export const repository = fileURLToPath(new URL("../../../..", import.meta.url)).replace(/\/$/, "");

/** Where data, secrets and logs are: `TRUNNION_DATA`, or `.data` in the repository. */
export function dataFolder(): string {
  const given = env.dataFolder ?? ".data";
  return isAbsolute(given) ? given : join(repository, given);
}
