import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { isRunning, ownMark, type ProcessMark, withLock } from "@trunnion/db/admin";
import { stopProgram } from "./program";

/** What a running start tells others through its data folder. */
export interface Run {
  readonly self: ProcessMark;
  /** Where it serves, once it does. */
  readonly origin?: string;
  /** The program it has started: the build, then the web server. */
  readonly program?: ProcessMark;
  readonly ownerUrl?: string;
  readonly serviceUrl?: string;
}

function pathIn(folder: string): string {
  return join(folder, "run.json");
}

/** Notes how far this start has come; for its owner's eyes only, since connections are in it. */
export async function note(folder: string, run: Omit<Run, "self">): Promise<void> {
  await writeFile(pathIn(folder), JSON.stringify({ self: ownMark(), ...run }), { mode: 0o600 });
}

async function read(folder: string): Promise<Run | undefined> {
  try {
    return JSON.parse(await readFile(pathIn(folder), "utf8")) as Run;
  } catch {
    return undefined;
  }
}

/**
 * Claims a data folder for this start. A build or web server that a killed start left behind is ended.
 *
 * @returns the start that has the folder already, if one does
 */
export async function claim(folder: string): Promise<Run | undefined> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  return withLock(join(folder, "run.lock"), async () => {
    const other = await read(folder);
    if (other && isRunning(other.self)) return other;
    if (other?.program) await stopProgram(other.program);
    await note(folder, {});
    return undefined;
  });
}

/** Gives the folder back. */
export async function release(folder: string): Promise<void> {
  await rm(pathIn(folder), { force: true });
}
