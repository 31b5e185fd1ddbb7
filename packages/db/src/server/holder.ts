import { randomUUID } from "node:crypto";
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { isRunning, ownMark, parseMark } from "./process";

/** Those who use a server each leave a note beside the data, so that the last one out stops it. */
function notesFolder(dataFolder: string): string {
  return join(dataFolder, "holders");
}

/** Notes that this process uses the server; returns the note's path, for `letGo`. */
export async function hold(dataFolder: string): Promise<string> {
  const folder = notesFolder(dataFolder);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const note = join(folder, `${process.pid}-${randomUUID()}`);
  await writeFile(note, JSON.stringify(ownMark()), { mode: 0o600 });
  return note;
}

/** Takes a note away. */
export async function letGo(note: string): Promise<void> {
  await rm(note, { force: true });
}

/** How many still use the server, and how many were killed before they let go of it. */
export async function countHolders(dataFolder: string): Promise<{ running: number; ended: number }> {
  const folder = notesFolder(dataFolder);
  let [running, ended] = [0, 0];
  for (const name of await readdir(folder).catch(() => [])) {
    const mark = parseMark(await readFile(join(folder, name), "utf8").catch(() => ""));
    if (mark && isRunning(mark)) running += 1;
    else ended += 1;
  }
  return { running, ended };
}

/** Clears away the notes of those who were killed, once their server has stopped. */
export async function forgetHolders(dataFolder: string): Promise<void> {
  await rm(notesFolder(dataFolder), { recursive: true, force: true });
}
