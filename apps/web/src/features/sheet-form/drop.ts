import "server-only";
import { randomUUID } from "node:crypto";
import { mkdir, readdir, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FilledForm } from "@trunnion/api";
import type { RefusalText } from "@trunnion/register";

/** A dropped file between being read and being taken: what was filled in on it, or why it was refused. */
export interface Drop {
  readonly person: string;
  readonly club: string;
  readonly event: string;
  readonly form?: FilledForm;
  readonly refusal?: RefusalText;
}

const folder = join(tmpdir(), "trunnion-sheet-form");
const keptMs = 24 * 3_600_000;
const shape = /^[0-9a-f-]{36}$/;

/** Puts a drop aside for a day; answers the name it has in the address of its page. */
export async function putAside(drop: Drop): Promise<string> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  await clear();
  const name = randomUUID();
  await writeFile(join(folder, `${name}.json`), JSON.stringify(drop), { mode: 0o600, flag: "wx" });
  return name;
}

/** A drop of this person, club and event; undefined where there is none, or none any more. */
export async function dropNamed(
  name: string,
  of: { readonly person: string; readonly club: string; readonly event: string },
): Promise<Drop | undefined> {
  if (!shape.test(name)) return undefined;
  const text = await readFile(join(folder, `${name}.json`), "utf8").catch(() => undefined);
  if (text === undefined) return undefined;
  const drop = JSON.parse(text) as Drop;
  const same = drop.person === of.person && drop.club === of.club && drop.event === of.event;
  return same ? drop : undefined;
}

async function clear(): Promise<void> {
  for (const name of await readdir(folder)) {
    const path = join(folder, name);
    const found = await stat(path).catch(() => undefined);
    if (found && found.mtimeMs < Date.now() - keptMs) await rm(path, { force: true });
  }
}

export const goneText: RefusalText = {
  what: "What was dropped is not kept here any more.",
  remedy: "Drop the file on the event's page again; what was taken already is not taken twice.",
};
