import { randomBytes } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";

/** The secret sign-in signs with: made once, kept in the data folder for its owner's eyes only. */
export async function authSecret(folder: string): Promise<string> {
  const path = join(folder, "auth-secret");
  const kept = (await readFile(path, "utf8").catch(() => "")).trim();
  if (kept !== "") return kept;
  const made = randomBytes(32).toString("hex");
  await writeFile(path, `${made}\n`, { mode: 0o600 });
  return made;
}
