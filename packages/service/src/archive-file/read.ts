import { isUtf8 } from "node:buffer";
import { createHash } from "node:crypto";
import { basename } from "node:path";
import type { Readable } from "node:stream";
import { refused } from "@trunnion/register";
import yauzl from "yauzl";
import { archiveLimits, nameProblem, SMALL } from "./policy";

/** An archive whose directory was read and found believable; nothing of it is unpacked yet. */
export interface OpenArchive {
  /** Name of the file, for messages. */
  readonly file: string;
  /** Files in it by name, with their unpacked size in bytes. */
  readonly members: ReadonlyMap<string, number>;
  /** The content of a file that is among the members, unpacked as it is read. */
  open(path: string): Promise<Readable>;
  close(): void;
}

const SYMLINK = 0o120000;
const FILE_KIND = 0o170000;

function problemOf(entry: yauzl.Entry, name: string): string | undefined {
  const kind = (entry.externalFileAttributes >>> 16) & FILE_KIND;
  if (kind === SYMLINK) return "a link to another file";
  if (entry.isEncrypted()) return "an encrypted file";
  if (![0, 8].includes(entry.compressionMethod)) return "a file packed by a method other than deflate";
  return nameProblem(name);
}

function checkSize(file: string, member: string, entry: yauzl.Entry): void {
  const { compressedSize, uncompressedSize } = entry;
  const ratio = uncompressedSize / Math.max(compressedSize, 1);
  if (uncompressedSize > SMALL && ratio > archiveLimits.ratio) {
    throw refused("ARCHIVE_LIMIT", { file, member, what: "ratio", found: ratio, limit: archiveLimits.ratio });
  }
}

/** Notes an entry under its name, and gives its unpacked size in bytes; folders say nothing that their files do not. */
function enter(file: string, entries: Map<string, yauzl.Entry>, entry: yauzl.Entry): number {
  const { generalPurposeBitFlag: flag, fileNameRaw, extraFields } = entry;
  const member = yauzl.getFileNameLowLevel(flag, fileNameRaw, extraFields, true);
  const isFolder = member.endsWith("/");
  const problem = problemOf(entry, isFolder ? member.slice(0, -1) : member);
  if (problem !== undefined) throw refused("ARCHIVE_NAME", { file, member, problem });
  if (isFolder) return 0;
  if (entries.has(member)) throw refused("ARCHIVE_NAME", { file, member, problem: "two files of one name" });
  checkSize(file, member, entry);
  entries.set(member, entry);
  return entry.uncompressedSize;
}

async function readDirectory(file: string, zip: yauzl.ZipFile): Promise<ReadonlyMap<string, yauzl.Entry>> {
  const { files, bytes } = archiveLimits;
  if (zip.entryCount > files) {
    throw refused("ARCHIVE_LIMIT", { file, what: "files", found: zip.entryCount, limit: files });
  }
  const entries = new Map<string, yauzl.Entry>();
  let found = 0;
  for await (const entry of zip.eachEntry()) {
    found += enter(file, entries, entry);
    if (found > bytes) throw refused("ARCHIVE_LIMIT", { file, what: "bytes", found, limit: bytes });
  }
  return entries;
}

const isRefusal = (error: unknown) => error instanceof Error && error.name === "Refusal";

/** What the ZIP library says of a broken file, as a refusal; anything that is not of the file stays what it is. */
export function unreadable(file: string, error: unknown): unknown {
  if (isRefusal(error) || !(error instanceof Error)) return error;
  // Faults of the disk carry a code of the system; what zlib and the ZIP library find in the content does not, or Z_….
  const { code } = error as NodeJS.ErrnoException;
  if (code !== undefined && !code.startsWith("Z_")) return error;
  return refused("ARCHIVE_UNREADABLE", { file, problem: error.message });
}

/**
 * Opens a ZIP file, and reads its directory: names that climb out, absolute ones, links, two of one name, more files or
 * bytes than are believed are refused before anything is unpacked.
 *
 * @throws Refusal FILE_NOT_FOUND, ARCHIVE_UNREADABLE, ARCHIVE_NAME, ARCHIVE_LIMIT
 */
export async function openArchiveFile(path: string): Promise<OpenArchive> {
  const file = basename(path);
  const zip = await yauzl
    .openPromise(path, {
      lazyEntries: true,
      autoClose: false,
      decodeStrings: false,
      validateEntrySizes: true,
    })
    .catch((error: NodeJS.ErrnoException) => {
      if (error.code === "ENOENT" || error.code === "EISDIR") throw refused("FILE_NOT_FOUND", { path });
      throw unreadable(file, error);
    });
  try {
    const entries = await readDirectory(file, zip);
    return {
      file,
      members: new Map([...entries].map(([name, { uncompressedSize }]) => [name, uncompressedSize])),
      open: (name) => openMember(zip, file, entries.get(name)),
      close: () => zip.close(),
    };
  } catch (error) {
    zip.close();
    throw unreadable(file, error);
  }
}

async function openMember(
  zip: yauzl.ZipFile,
  file: string,
  entry: yauzl.Entry | undefined,
): Promise<Readable> {
  if (!entry) throw new Error(`${file} has no such member`);
  return zip.openReadStreamPromise(entry).catch((error: unknown) => {
    throw unreadable(file, error);
  });
}

/**
 * Reads a file of the archive through, giving its content chunk by chunk, and proves its hash at the end.
 *
 * @throws Refusal ARCHIVE_HASH at its end, ARCHIVE_UNREADABLE
 */
export async function* provenContent(
  archive: OpenArchive,
  { path, sha256 }: { readonly path: string; readonly sha256: string },
): AsyncGenerator<Buffer> {
  const hash = createHash("sha256");
  const stream = await archive.open(path);
  try {
    for await (const chunk of stream as AsyncIterable<Buffer>) {
      hash.update(chunk);
      yield chunk;
    }
  } catch (error) {
    throw unreadable(archive.file, error);
  } finally {
    stream.destroy();
  }
  const found = hash.digest("hex");
  if (found !== sha256)
    throw refused("ARCHIVE_HASH", { file: archive.file, member: path, stated: sha256, found });
}

/**
 * A small file of the archive, whole.
 *
 * @throws Refusal ARCHIVE_LIMIT, ARCHIVE_UNREADABLE
 */
export async function wholeText(archive: OpenArchive, path: string): Promise<string> {
  const { file } = archive;
  const bytes = archive.members.get(path) ?? 0;
  const limit = archiveLimits.wholeBytes;
  if (bytes > limit)
    throw refused("ARCHIVE_LIMIT", { file, member: path, what: "bytes", found: bytes, limit });
  const chunks: Buffer[] = [];
  try {
    for await (const chunk of (await archive.open(path)) as AsyncIterable<Buffer>) chunks.push(chunk);
  } catch (error) {
    throw unreadable(file, error);
  }
  return Buffer.concat(chunks).toString("utf8");
}

const END = 0x0a;

/** Lines of a text that comes in chunks, many at a time; `number` is that of the first. */
export interface LineBlock {
  readonly number: number;
  readonly lines: readonly string[];
}

interface Place {
  readonly file: string;
  readonly member: string;
}

function decoded(block: Buffer, number: number, { file, member }: Place): readonly string[] {
  if (isUtf8(block)) return block.toString("utf8").split("\n");
  let start = 0;
  for (let line = number; ; line++) {
    const end = block.indexOf(END, start);
    const bytes = block.subarray(start, end === -1 ? block.length : end);
    if (!isUtf8(bytes) || end === -1) {
      throw refused("ARCHIVE_LINE", { file, member, line, problem: "it is not text in UTF-8" });
    }
    start = end + 1;
  }
}

/**
 * The lines of a file of rows, as its content comes.
 *
 * @throws Refusal ARCHIVE_LINE for bytes that are no text and a last line without its end, ARCHIVE_LIMIT for a line longer
 *   than is read
 */
export async function* linesOf(content: AsyncIterable<Buffer>, place: Place): AsyncGenerator<LineBlock> {
  let rest: Buffer[] = [];
  let held = 0;
  let number = 1;
  for await (const chunk of content) {
    const end = chunk.lastIndexOf(END);
    if (end === -1) {
      rest.push(chunk);
      held += chunk.length;
      const limit = archiveLimits.lineBytes;
      if (held > limit) throw refused("ARCHIVE_LIMIT", { ...place, what: "lineBytes", found: held, limit });
      continue;
    }
    const lines = decoded(Buffer.concat([...rest, chunk.subarray(0, end)]), number, place);
    yield { number, lines };
    number += lines.length;
    const tail = chunk.subarray(end + 1);
    rest = tail.length === 0 ? [] : [tail];
    held = tail.length;
  }
  if (held > 0) throw refused("ARCHIVE_LINE", { ...place, line: number, problem: "its end is missing" });
}
