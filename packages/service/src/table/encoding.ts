import { refused } from "@trunnion/register";
import iconv from "iconv-lite";

/** First bytes by which a file that is not text gives itself away, and what to call it. */
const signatures: readonly (readonly [string, readonly number[]])[] = [
  ["a ZIP archive (XLSX and ODS are such)", [0x50, 0x4b, 0x03, 0x04]],
  ["an old Excel workbook", [0xd0, 0xcf, 0x11, 0xe0]],
  ["a PDF", [0x25, 0x50, 0x44, 0x46]],
  ["a PNG picture", [0x89, 0x50, 0x4e, 0x47]],
  ["a JPEG picture", [0xff, 0xd8, 0xff]],
  ["a gzip archive", [0x1f, 0x8b]],
  ["text in UTF-16", [0xff, 0xfe]],
  ["text in UTF-16", [0xfe, 0xff]],
];

const CONTROL = new Set([...Array(32).keys()].filter((code) => code !== 9 && code !== 10 && code !== 13));

function lineAt(bytes: Uint8Array, position: number): number {
  let line = 1;
  for (let i = 0; i < position; i++) if (bytes[i] === 10) line++;
  return line;
}

function utf8OrNothing(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Bytes that Windows-1252 gives no character. */
const UNASSIGNED = new Set([0x81, 0x8d, 0x8f, 0x90, 0x9d]);

/**
 * Text of a file, in UTF-8 (with or without byte-order mark) or else Windows-1252.
 *
 * @throws Refusal FILE_NOT_A_TABLE for what its first bytes or control characters show not to be text;
 *   FILE_ENCODING with the line for a byte that neither encoding has
 */
export function decodeText(bytes: Uint8Array, file: string): string {
  for (const [found, start] of signatures) {
    if (start.every((byte, i) => bytes[i] === byte)) throw refused("FILE_NOT_A_TABLE", { file, found });
  }
  const control = bytes.findIndex((byte) => CONTROL.has(byte));
  if (control >= 0) {
    const found = `binary data (byte ${bytes[control]} on line ${lineAt(bytes, control)})`;
    throw refused("FILE_NOT_A_TABLE", { file, found });
  }
  const text = utf8OrNothing(bytes);
  if (text !== undefined) return text;
  const stray = bytes.findIndex((byte) => UNASSIGNED.has(byte));
  if (stray >= 0) {
    throw refused("FILE_ENCODING", {
      file,
      line: lineAt(bytes, stray),
      found: `byte 0x${bytes[stray]?.toString(16)}`,
    });
  }
  // Node's own decoder turns 0x80-0x9f into control characters; the euro sign and dashes live there.
  return iconv.decode(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), "win1252");
}
