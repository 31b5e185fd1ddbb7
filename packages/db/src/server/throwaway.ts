import { mkdtemp, readdir, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type EmbeddedServer, openEmbedded } from "./embedded";
import { countHolders } from "./holder";
import { copyPristine } from "./pristine";

const PREFIX = "trunnion-throwaway-";

/** Whether a folder is ours, was in use, and everyone who used it was killed before closing it. */
async function isLeftBehind(folder: string): Promise<boolean> {
  const owner = (await stat(folder).catch(() => undefined))?.uid;
  const busy = await stat(join(folder, "server.lock")).catch(() => undefined);
  if (owner !== process.getuid?.() || busy) return false;
  const { running, ended } = await countHolders(folder);
  return running === 0 && ended > 0;
}

/** Ends the servers that killed test runs left behind, and deletes their data. */
async function sweep(): Promise<void> {
  for (const name of await readdir(tmpdir()).catch(() => [])) {
    const folder = join(tmpdir(), name);
    if (!name.startsWith(PREFIX) || !(await isLeftBehind(folder))) continue;
    const server = await openEmbedded({ dataFolder: folder, throwaway: true }).catch(() => undefined);
    await server?.close();
  }
}

/** Opens a server with an empty database in a temporary folder; closing deletes it. For tests. */
export async function openThrowaway(log?: (line: string) => void): Promise<EmbeddedServer> {
  await sweep();
  const dataFolder = await mkdtemp(join(tmpdir(), PREFIX));
  await copyPristine(dataFolder);
  return openEmbedded({ dataFolder, throwaway: true, ...(log && { log }) });
}
