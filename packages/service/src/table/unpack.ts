import { buffer } from "node:stream/consumers";
import { Refusal, refused } from "@trunnion/register";
import { type Entry, fromBufferPromise, type ZipFile } from "yauzl";
import { ZipFile as Packer } from "yazl";

/** What of a workbook is unpacked at most; looked at before anything is. */
export const workbookLimits = {
  /** Bytes of an XLSX workbook's parts together. */
  xlsx: 200_000_000,
  /** Bytes of an ODS workbook's parts together: its reader keeps the whole document, at about twenty times its size. */
  ods: 64_000_000,
  /** Parts of a workbook. */
  entries: 2_000,
  sheets: 60,
  /** Rows above the headings: a title, a date. */
  headRows: 20,
  /** Characters of a cell. */
  cell: 10_000,
  /** Milliseconds to read one. */
  ms: 120_000,
  /** Megabytes of memory for the thread that reads one. */
  memoryMb: 1_536,
} as const;

/** The kinds of workbook that are read. */
export type WorkbookKind = "xlsx" | "ods";

/** A workbook whose parts have been unpacked and measured: what it claims to be large it is, and no larger. */
export interface MeasuredWorkbook {
  readonly kind: WorkbookKind;
  /** The workbook again, its parts stored rather than packed: whoever reads it unpacks nothing. */
  readonly bytes: Uint8Array;
}

/** Parts that the rows of a sheet stand in; pictures, macros and previews are left where they are. */
const isNeeded = (name: string) => /\.(xml|rels)$/i.test(name) || name === "mimetype";

function damaged(file: string, error: unknown): never {
  const problem = (error instanceof Error ? error.message : String(error)).replace(/\.$/, "");
  throw refused("WORKBOOK_BROKEN", { file, problem });
}

async function directoryOf(zip: ZipFile): Promise<readonly Entry[]> {
  const entries: Entry[] = [];
  for await (const entry of zip.eachEntry()) {
    entries.push(entry);
    if (entries.length > workbookLimits.entries) break;
  }
  return entries;
}

/** Ends with an error where a part is longer, or shorter, than the directory says. */
async function unpackOne(zip: ZipFile, entry: Entry): Promise<Buffer> {
  return buffer(await zip.openReadStreamPromise(entry));
}

/** What kind of workbook an archive is, by the parts it has. */
async function kindOf(zip: ZipFile, entries: readonly Entry[]): Promise<WorkbookKind | undefined> {
  const names = new Set(entries.map(({ fileName }) => fileName));
  if (names.has("xl/workbook.xml") || names.has("[Content_Types].xml")) {
    return [...names].some((name) => /^xl\/.*\.xml$/.test(name)) ? "xlsx" : undefined;
  }
  const type = entries.find(({ fileName }) => fileName === "mimetype");
  if (!type || type.uncompressedSize > 200 || !names.has("content.xml")) return undefined;
  const said = (await unpackOne(zip, type)).toString("latin1").trim();
  return said.startsWith("application/vnd.oasis.opendocument.spreadsheet") ? "ods" : undefined;
}

function repacked(parts: readonly (readonly [string, Buffer])[]): Promise<Buffer> {
  const packer = new Packer();
  for (const [name, bytes] of parts) packer.addBuffer(bytes, name, { compress: false });
  packer.end();
  return buffer(packer.outputStream);
}

const isLocked = (entry: Entry) => (entry.generalPurposeBitFlag & 1) === 1;

async function measured(zip: ZipFile, file: string): Promise<MeasuredWorkbook> {
  const entries = await directoryOf(zip);
  if (entries.length > workbookLimits.entries) {
    throw refused("WORKBOOK_BROKEN", { file, problem: `it has more than ${workbookLimits.entries} parts` });
  }
  const kind = await kindOf(zip, entries);
  if (!kind) throw refused("FILE_NOT_A_TABLE", { file, found: "a ZIP archive without a workbook in it" });
  const needed = entries.filter(({ fileName }) => isNeeded(fileName));
  if (needed.some(isLocked)) throw refused("FILE_LOCKED", { file });
  const unpacked = needed.reduce((sum, { uncompressedSize }) => sum + uncompressedSize, 0);
  const packed = needed.reduce((sum, { compressedSize }) => sum + compressedSize, 0);
  const limit = workbookLimits[kind];
  if (unpacked > limit) throw refused("WORKBOOK_TOO_LARGE", { file, packed, unpacked, limit });
  const parts: (readonly [string, Buffer])[] = [];
  for (const entry of needed) parts.push([entry.fileName, await unpackOne(zip, entry)]);
  const manifest = parts.find(([name]) => name === "META-INF/manifest.xml")?.[1];
  if (manifest?.includes("encryption-data")) throw refused("FILE_LOCKED", { file });
  return { kind, bytes: await repacked(parts) };
}

/**
 * Unpacks a workbook's parts within the limits. Their sizes are taken from the archive's directory first, so that a
 * small file that claims gigabytes costs nothing; and held to while unpacking, so that one that lies is found out.
 *
 * @throws Refusal FILE_NOT_A_TABLE for another kind of archive, FILE_LOCKED, WORKBOOK_TOO_LARGE with its numbers,
 *   WORKBOOK_BROKEN
 */
export async function measureWorkbook(bytes: Uint8Array, file: string): Promise<MeasuredWorkbook> {
  const whole = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const zip = await fromBufferPromise(whole, { lazyEntries: true, validateEntrySizes: true }).catch(
    (error: unknown) => damaged(file, error),
  );
  try {
    return await measured(zip, file);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    return damaged(file, error);
  } finally {
    zip.close();
  }
}
