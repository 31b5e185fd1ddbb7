import { createReadStream } from "node:fs";
import { Readable, type Writable } from "node:stream";
import { pipeline } from "node:stream/promises";
import yazl from "yazl";

/** One file to put into an archive, opened when its turn comes. */
export interface FileToPack {
  readonly path: string;
  /** Its content, opened once. */
  readonly open: () => Promise<Readable> | Readable;
  /** Left as it is: photographs do not get smaller. */
  readonly stored?: boolean;
}

/**
 * One time for every file, so that the same content gives the same bytes. Midnight of this machine's own zone, since the
 * DOS field of a ZIP file has a local time, and takes no other.
 */
const TIME = new Date(1980, 0, 1, 0, 0, 0);
const OPTIONS = { mtime: TIME, mode: 0o100644, forceDosTimestamp: true } as const;

/** Content held in memory, as a file to pack. */
export const fromText = (path: string, text: string): FileToPack => ({
  path,
  open: () => Readable.from([Buffer.from(text, "utf8")]),
});

/** A file of this machine's, as a file to pack. */
export const fromDisk = (path: string, place: string): FileToPack => ({
  path,
  open: () => createReadStream(place),
});

/**
 * Packs files into one ZIP file, in the order given, as fast as whoever reads it; ZIP64 where it is needed. The same files
 * give the same bytes, with the same version of Node's zlib. Nothing but the list of names is held in memory.
 *
 * @throws whatever a file throws when it is read; the output is then left unfinished and destroyed
 */
export async function packFiles(files: Iterable<FileToPack>, output: Writable): Promise<void> {
  const zip = new yazl.ZipFile();
  let current: Readable | undefined;
  const failed = new Promise<never>((_, reject) => zip.once("error", reject));
  for (const { path, open, stored } of files) {
    zip.addReadStreamLazy(path, { ...OPTIONS, compress: !stored }, (give) => {
      Promise.resolve()
        .then(open)
        .then((stream) => {
          current = stream;
          stream.once("error", (error) => zip.emit("error", error));
          give(null, stream);
        })
        .catch((error: unknown) => zip.emit("error", error));
    });
  }
  zip.end();
  const source = zip.outputStream as Readable;
  try {
    await Promise.race([pipeline(source, output), failed]);
  } catch (error) {
    current?.destroy();
    source.destroy();
    output.destroy();
    throw error;
  }
}
