import { randomUUID } from "node:crypto";
import { createReadStream } from "node:fs";
import { mkdir, open, readdir, rename, rm, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { Blobs } from "./blobs";

/** Where files are written before they have their name. */
const INCOMING = ".incoming";
/** What was left there for so long was left by a program that was killed. */
const LEFT_MS = 24 * 3_600_000;

const isMissing = (error: unknown) => ["ENOENT", "ENOTDIR"].includes((error as { code?: string }).code ?? "");

async function missingAs<T>(work: Promise<T>, instead: T): Promise<T> {
  try {
    return await work;
  } catch (error) {
    if (isMissing(error)) return instead;
    throw error;
  }
}

/** Forces a folder's list of names to the disk, where the system can do that to a folder. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r").catch(() => undefined);
  try {
    await handle?.sync().catch(() => undefined);
  } finally {
    await handle?.close();
  }
}

async function sweep(incoming: string): Promise<void> {
  for (const name of await missingAs(readdir(incoming), [])) {
    const path = join(incoming, name);
    const found = await missingAs(stat(path), undefined);
    if (found && Date.now() - found.mtimeMs > LEFT_MS) await rm(path, { force: true });
  }
}

/** Keeps files in a folder: written under another name, forced to the disk, renamed. Only its owner may read them. */
export async function folderBlobs(folder: string): Promise<Blobs> {
  const incoming = join(folder, INCOMING);
  await sweep(incoming);
  const pathOf = (key: string) => join(folder, ...key.split("/"));
  return {
    place: `the folder ${folder}`,
    async put(key, content) {
      const path = pathOf(key);
      await mkdir(incoming, { recursive: true, mode: 0o700 });
      await mkdir(dirname(path), { recursive: true, mode: 0o700 });
      const draft = join(incoming, randomUUID());
      try {
        const handle = await open(draft, "wx", 0o600);
        try {
          await handle.writeFile(content);
          await handle.sync();
        } finally {
          await handle.close();
        }
        await rename(draft, path);
      } catch (error) {
        await rm(draft, { force: true });
        throw error;
      }
      await syncFolder(dirname(path));
    },
    async read(key, range) {
      const handle = await missingAs(open(pathOf(key), "r"), undefined);
      if (!handle) return undefined;
      const part = range === undefined ? {} : { start: range.first, end: range.last };
      return createReadStream("", { fd: handle, ...part });
    },
    exists: async (key) => (await missingAs(stat(pathOf(key)), undefined))?.isFile() ?? false,
    delete: (key) => rm(pathOf(key), { force: true }),
  };
}
