import { createHash, randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdir, rename, rm } from "node:fs/promises";
import type { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { refused } from "@trunnion/register";
import { tableLimits } from "../table";
import { type KeptFile, pathOf } from "./read";

export interface KeepFileInput {
  /** The installation's data folder. */
  readonly folder: string;
  readonly clubId: string;
  readonly stream: Readable;
  /** Name as it was sent, for what is said of it. */
  readonly file: string;
}

/**
 * Keeps an uploaded file on the disk until it has been read in, under its hash; never whole in memory, and never more
 * of it than is read anyway. A file that is too large leaves nothing.
 *
 * @throws Refusal FILE_TOO_LARGE with the limit, FILE_EMPTY
 */
export async function keepFile({ folder, clubId, stream, file }: KeepFileInput): Promise<KeptFile> {
  const hash = createHash("sha256");
  let bytes = 0;
  const unfinished = pathOf(folder, clubId, `.${randomUUID()}`);
  await mkdir(pathOf(folder, clubId, "."), { recursive: true, mode: 0o700 });
  try {
    await pipeline(
      stream,
      async function* measure(source: AsyncIterable<Buffer>) {
        for await (const chunk of source) {
          bytes += chunk.length;
          if (bytes > tableLimits.bytes) {
            throw refused("FILE_TOO_LARGE", { file, bytes, limit: tableLimits.bytes });
          }
          hash.update(chunk);
          yield chunk;
        }
      },
      createWriteStream(unfinished, { mode: 0o600 }),
    );
    if (bytes === 0) throw refused("FILE_EMPTY", { file });
    const sha256 = hash.digest("hex");
    await rename(unfinished, pathOf(folder, clubId, sha256));
    return { folder, clubId, sha256, file };
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  }
}

/** Deletes a kept file; one that is not there is none. */
export async function dropFile({ folder, clubId, sha256 }: Omit<KeptFile, "file">): Promise<void> {
  await rm(pathOf(folder, clubId, sha256), { force: true });
}
