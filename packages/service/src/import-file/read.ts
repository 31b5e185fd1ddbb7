import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { refused } from "@trunnion/register";

/** An uploaded file that waits to be read in. */
export interface KeptFile {
  /** The installation's data folder. */
  readonly folder: string;
  readonly clubId: string;
  /** SHA-256, hex: its name on the disk. */
  readonly sha256: string;
  /** Name as it was sent. */
  readonly file: string;
}

/** One folder per club: what one has done with must not be taken from another that sent the same. */
export function pathOf(folder: string, clubId: string, name: string): string {
  return join(folder, "import", clubId, name);
}

/**
 * The bytes of a kept file.
 *
 * @throws Refusal IMPORT_FILE_GONE
 */
export async function readKeptFile({ folder, clubId, sha256, file }: KeptFile): Promise<Uint8Array> {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new Error(`no hash of a file: ${sha256}`);
  return readFile(pathOf(folder, clubId, sha256)).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") throw refused("IMPORT_FILE_GONE", { file });
    throw error;
  });
}
