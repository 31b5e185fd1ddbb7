import { randomUUID } from "node:crypto";
import { link, readFile, rename, rm, writeFile } from "node:fs/promises";
import { EmbeddedServerError } from "./error";
import { isRunning, ownMark, type ProcessMark, parseMark, waitUntil } from "./process";

/** Longest wait for another process's turn: a first start on a slow disk takes some ten seconds. */
const WAIT_MS = 120_000;

async function readMark(path: string): Promise<ProcessMark | undefined> {
  return parseMark(await readFile(path, "utf8").catch(() => ""));
}

/** Makes the lock file whole and at once; false when there is one already. */
async function take(path: string): Promise<boolean> {
  const draft = `${path}.${randomUUID()}`;
  await writeFile(draft, JSON.stringify(ownMark()), { mode: 0o600 });
  try {
    await link(draft, path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    return false;
  } finally {
    await rm(draft, { force: true });
  }
}

/** Clears away a lock whose process has ended, and puts it back if another took it in between. */
async function clearIfLeftBehind(path: string): Promise<void> {
  const holder = await readMark(path);
  if (holder && isRunning(holder)) return;
  const aside = `${path}.${randomUUID()}`;
  await rename(path, aside).catch(() => undefined);
  const moved = await readMark(aside);
  if (moved && isRunning(moved)) await link(aside, path).catch(() => undefined);
  await rm(aside, { force: true });
}

/**
 * Does the work while no other process or thread holds the lock at this path.
 * A lock whose process has ended is taken over.
 *
 * @throws EmbeddedServerError when another holds it for longer than that (two minutes when left out)
 */
export async function withLock<T>(path: string, work: () => Promise<T>, waitMs = WAIT_MS): Promise<T> {
  const mine = await waitUntil(
    async () => {
      if (await take(path)) return true;
      await clearIfLeftBehind(path);
      return false;
    },
    { forMs: waitMs },
  );
  if (!mine) {
    const holder = await readMark(path);
    throw new EmbeddedServerError(
      `process ${holder?.pid ?? "unknown"} has held ${path} for ${waitMs / 1000} s; end that process and try again`,
    );
  }
  try {
    return await work();
  } finally {
    await rm(path, { force: true });
  }
}
