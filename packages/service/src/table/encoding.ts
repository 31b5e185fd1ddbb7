import { refused } from "@trunnion/register";
import iconv from "iconv-lite";
import { measureUtf8 } from "./utf8";

/** First bytes by which a file that is not text gives itself away, and what to call it. */
const signatures: readonly (readonly [string, readonly number[]])[] = [
  ["a ZIP archive (XLSX and ODS are such)", [0x50, 0x4b, 0x03, 0x04]],
  ["an old spreadsheet workbook (XLS)", [0xd0, 0xcf, 0x11, 0xe0]],
  ["a PDF", [0x25, 0x50, 0x44, 0x46]],
  ["a PNG picture", [0x89, 0x50, 0x4e, 0x47]],
  ["a JPEG picture", [0xff, 0xd8, 0xff]],
  ["a gzip archive", [0x1f, 0x8b]],
];
const UTF8_MARK = [0xef, 0xbb, 0xbf];
/** Marks at the beginning of what spreadsheets save as "Unicode text" (Unicode Standard, 23.8). */
const UTF16 = [
  ["utf16-le", [0xff, 0xfe]],
  ["utf16-be", [0xfe, 0xff]],
] as const;

const CONTROL = new Set([...Array(32).keys()].filter((code) => code !== 9 && code !== 10 && code !== 13));
/** The mark that old systems end a text file with. */
const END_OF_FILE = 0x1a;
/** Bytes that Windows-1252 gives no character. */
const UNASSIGNED = new Set([0x81, 0x8d, 0x8f, 0x90, 0x9d]);

const begins = (bytes: Uint8Array, start: readonly number[]) => start.every((byte, i) => bytes[i] === byte);
const hex = (byte: number | undefined) => `0x${(byte ?? 0).toString(16).padStart(2, "0")}`;

/** Line a byte stands on, whichever of LF, CR LF and CR ends the lines. */
function lineAt(bytes: Uint8Array, position: number): number {
  let line = 1;
  for (let i = 0; i < position; i++) {
    if (bytes[i] === 10 || (bytes[i] === 13 && bytes[i + 1] !== 10)) line++;
  }
  return line;
}

function utf8OrNothing(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Name of the stream that an encrypted workbook is kept in (MS-OFFCRYPTO 2.3.4.4), as its container writes it. */
const ENCRYPTED = Buffer.from("EncryptedPackage", "utf16le");

function isLocked(bytes: Uint8Array): boolean {
  const container = begins(bytes, [0xd0, 0xcf, 0x11, 0xe0]);
  return container && Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).includes(ENCRYPTED);
}

function refuseWhatIsNoText(bytes: Uint8Array, file: string): void {
  if (isLocked(bytes)) throw refused("FILE_LOCKED", { file });
  for (const [found, start] of signatures) {
    if (begins(bytes, start)) throw refused("FILE_NOT_A_TABLE", { file, found });
  }
  const control = bytes.findIndex((byte) => CONTROL.has(byte));
  if (control < 0) return;
  const found = `binary data (byte ${hex(bytes[control])} on line ${lineAt(bytes, control)})`;
  throw refused("FILE_NOT_A_TABLE", { file, found });
}

/** Refuses text that is UTF-8 but for a few bytes: read as Windows-1252 every name in it would be spoilt. */
function refuseSpoiltUtf8(bytes: Uint8Array, file: string): void {
  const { sequences, strays, firstStray } = measureUtf8(bytes);
  if (!begins(bytes, UTF8_MARK) && sequences < strays) return;
  const found = `byte ${hex(bytes[firstStray])}, in a file that is UTF-8 elsewhere,`;
  throw refused("FILE_ENCODING", { file, line: lineAt(bytes, firstStray), found });
}

function decodeUtf16(bytes: Uint8Array, encoding: (typeof UTF16)[number][0], file: string): string {
  const text = iconv.decode(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), encoding);
  const control = [...text.slice(0, 100_000)].find((character) => CONTROL.has(character.charCodeAt(0)));
  if (control === undefined) return text;
  throw refused("FILE_NOT_A_TABLE", { file, found: `binary data (${hex(control.charCodeAt(0))})` });
}

/**
 * Text of a file, in UTF-16 where its mark says so, in UTF-8 (with or without byte-order mark) or else Windows-1252.
 *
 * @throws Refusal FILE_NOT_A_TABLE for what its first bytes or control characters show not to be text;
 *   FILE_ENCODING with the line for a byte that neither encoding has, or that spoils text in UTF-8
 */
export function decodeText(whole: Uint8Array, file: string): string {
  const wide = UTF16.find(([, mark]) => begins(whole, mark));
  if (wide) return decodeUtf16(whole, wide[0], file);
  const bytes = whole.at(-1) === END_OF_FILE ? whole.subarray(0, -1) : whole;
  refuseWhatIsNoText(bytes, file);
  const text = utf8OrNothing(bytes);
  if (text !== undefined) return text;
  refuseSpoiltUtf8(bytes, file);
  const stray = bytes.findIndex((byte) => UNASSIGNED.has(byte));
  if (stray >= 0) {
    const found = `byte ${hex(bytes[stray])}`;
    throw refused("FILE_ENCODING", { file, line: lineAt(bytes, stray), found });
  }
  // Node's own decoder turns 0x80-0x9f into control characters; the euro sign and dashes live there.
  return iconv.decode(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), "win1252");
}
