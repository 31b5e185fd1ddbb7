import { execFile } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdir, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { installedBinaries } from "./binary";
import { openEmbedded } from "./embedded";
import { withLock } from "./lock";

const run = promisify(execFile);

/** What a data folder with an empty database consists of. */
const PARTS = ["postgres", "owner-password", "server.json"];

async function isThere(path: string): Promise<boolean> {
  return (await stat(path).catch(() => undefined)) !== undefined;
}

/** Where the folder to copy is kept: beside the installed packages, per user and per PostgreSQL. */
async function place(): Promise<string> {
  const { folder, postgres } = await installedBinaries();
  const { mtimeMs, size } = await stat(postgres);
  const key = createHash("sha256").update(`${mtimeMs} ${size}`).digest("hex").slice(0, 12);
  const cache = join(folder, "../../../.cache/trunnion");
  await mkdir(cache, { recursive: true });
  return join(cache, `pristine-${process.getuid?.()}-${key}`);
}

async function make(folder: string): Promise<void> {
  const draft = `${folder}.new`;
  await rm(draft, { recursive: true, force: true });
  await (await openEmbedded({ dataFolder: draft })).close();
  await rename(draft, folder);
}

/**
 * Fills an empty data folder with a copy of one that was made before: making one takes a second and more,
 * copying it a tenth. Where it cannot be kept, nothing is done, and the server makes its data itself.
 */
export async function copyPristine(dataFolder: string): Promise<void> {
  try {
    const folder = await place();
    await withLock(`${folder}.lock`, async () => {
      if (!(await isThere(folder))) await make(folder);
    });
    // As nobody's, the data lies elsewhere.
    if (!(await isThere(join(folder, "postgres")))) return;
    await run("cp", ["-R", ...PARTS.map((part) => join(folder, part)), dataFolder]);
  } catch {
    for (const part of PARTS) await rm(join(dataFolder, part), { recursive: true, force: true });
  }
}
