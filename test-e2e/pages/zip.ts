import { inflateRawSync } from "node:zlib";

const DIRECTORY_END = 0x06054b50;
const DIRECTORY_ENTRY = 0x02014b50;

/**
 * Reads a ZIP file by its directory, after the format's published description (APPNOTE 6.3.10, 4.3): it shares no code with
 * what wrote it. Small files only: no ZIP64.
 */
export function unzip(bytes: Buffer): ReadonlyMap<string, Buffer> {
  let end = bytes.length - 22;
  while (end >= 0 && bytes.readUInt32LE(end) !== DIRECTORY_END) end--;
  const files = new Map<string, Buffer>();
  let at = bytes.readUInt32LE(end + 16);
  while (bytes.readUInt32LE(at) === DIRECTORY_ENTRY) {
    const [method, packed] = [bytes.readUInt16LE(at + 10), bytes.readUInt32LE(at + 20)];
    const [nameLength, extra, comment] = [28, 30, 32].map((place) => bytes.readUInt16LE(at + place));
    const local = bytes.readUInt32LE(at + 42);
    const name = bytes.toString("utf8", at + 46, at + 46 + (nameLength ?? 0));
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    const content = bytes.subarray(start, start + packed);
    files.set(name, method === 0 ? content : inflateRawSync(content));
    at += 46 + (nameLength ?? 0) + (extra ?? 0) + (comment ?? 0);
  }
  return files;
}
