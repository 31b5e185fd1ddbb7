import { access, constants, open, stat, writeFile } from "node:fs/promises";
import { basename, dirname, resolve } from "node:path";
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

/** A file cannot be written where the user asked for it. */
export class OutputFault extends Error {
  override readonly name = "OutputFault";
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such folder",
  ENOTDIR: "a part of that path is no folder",
  EACCES: "you may not write there",
  EPERM: "you may not write there",
  EROFS: "that disk can only be read",
  ENOSPC: "the disk is full",
  EISDIR: "that is a folder",
};

function outputFault(path: string, error: unknown): OutputFault {
  const { code = "", message } = error as NodeJS.ErrnoException;
  return new OutputFault(`${path} cannot be written: ${reasons[code] ?? message}.`);
}

/**
 * Sees that a file can be written, before work is done that would be lost.
 *
 * @throws OutputFault
 */
export async function requireWritable(path: string): Promise<void> {
  const there = await stat(path).catch(() => undefined);
  if (there?.isDirectory()) throw outputFault(path, { code: "EISDIR" });
  // With a dot at its end, so that a folder that is none is told as that.
  const place = there ? path : `${dirname(resolve(path))}/.`;
  await access(place, constants.W_OK).catch((error: unknown) => {
    throw outputFault(path, error);
  });
}

/** @throws OutputFault */
export async function writeOutput(path: string, bytes: Uint8Array): Promise<void> {
  await writeFile(path, bytes).catch((error: unknown) => {
    throw outputFault(path, error);
  });
}
