import { mkdtemp, readdir, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";

const PREFIX = "trunnion-aside-";
/** What was put aside so long ago was left by a program that was killed. */
const LEFT_MS = 24 * 3_600_000;

async function sweep(): Promise<void> {
  for (const name of await readdir(tmpdir())) {
    if (!name.startsWith(PREFIX)) continue;
    const path = join(tmpdir(), name);
    const found = await stat(path).catch(() => undefined);
    if (found === undefined || Date.now() - found.mtimeMs < LEFT_MS) continue;
    // Somebody else's stays: it is theirs to delete.
    await rm(path, { recursive: true, force: true }).catch(() => undefined);
  }
}

/** A temporary folder that only its owner may look into. */
export interface AsideFolder {
  readonly path: string;
  /** Deletes it with all that is in it. */
  discard(): Promise<void>;
}

/**
 * Opens a temporary folder for what waits to be sent, and clears away what a program that was killed left more than a day
 * ago: there may be people's names in it.
 */
export async function openAside(): Promise<AsideFolder> {
  await sweep();
  const path = await mkdtemp(join(tmpdir(), PREFIX));
  return { path, discard: () => rm(path, { recursive: true, force: true }) };
}
