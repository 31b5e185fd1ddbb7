import { createWriteStream } from "node:fs";
import { rename, rm, stat } from "node:fs/promises";
import type { Writable } from "node:stream";
import { OutputFault, requireWritable } from "./file";

export interface NewFileInput {
  readonly path: string;
  /** Replace what is there. */
  readonly force: boolean;
  /** Only its owner may read it. */
  readonly secret: boolean;
}

/**
 * Sees that a new file can be written and stands in nobody's way, before work is done that would be lost.
 *
 * @throws OutputFault
 */
export async function requireNew({ path, force }: Pick<NewFileInput, "path" | "force">): Promise<void> {
  await requireWritable(path);
  const there = await stat(path).catch(() => undefined);
  if (there && !force) throw new OutputFault(`${path} is there already, and is kept; --force replaces it`);
}

/**
 * Writes a new file as its content comes: under another name first, so that it is there whole or not at all.
 *
 * @returns its size in bytes
 * @throws OutputFault, and whatever the filling throws
 */
export async function writeNew(
  { path, force, secret }: NewFileInput,
  fill: (output: Writable) => Promise<void>,
): Promise<number> {
  await requireNew({ path, force });
  const draft = `${path}.${process.pid}.part`;
  const mode = secret ? 0o600 : 0o644;
  const output = createWriteStream(draft, { flags: "wx", mode });
  // Closed for good, whether it was ever opened or not: a file opened after it was removed would stay.
  const closed = new Promise<void>((resolve) => output.once("close", () => resolve()));
  try {
    await fill(output);
    const { size } = await stat(draft);
    await rename(draft, path);
    return size;
  } catch (error) {
    output.destroy();
    await closed;
    await rm(draft, { force: true });
    const { code, syscall, message } = error as NodeJS.ErrnoException;
    if (code !== undefined && ["open", "write", "rename"].includes(syscall ?? "")) {
      throw new OutputFault(`${path} cannot be written: ${message}.`);
    }
    throw error;
  }
}
