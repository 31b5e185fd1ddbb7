import { open } from "node:fs/promises";
import { basename } from "node:path";
import { refused } from "@trunnion/register";

/**
 * Reads a file of at most so many bytes; the size is looked at before anything is read.
 *
 * @throws Refusal FILE_NOT_FOUND, FILE_TOO_LARGE
 */
export async function readBounded(path: string, limit: number): Promise<Uint8Array> {
  const handle = await open(path, "r").catch(() => {
    throw refused("FILE_NOT_FOUND", { path });
  });
  try {
    const status = await handle.stat();
    if (!status.isFile()) throw refused("FILE_NOT_FOUND", { path });
    if (status.size > limit)
      throw refused("FILE_TOO_LARGE", { file: basename(path), bytes: status.size, limit });
    return await handle.readFile();
  } finally {
    await handle.close();
  }
}
