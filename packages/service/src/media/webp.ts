import { Broken } from "./broken";

/** Chunks of a picture and of its frames (RFC 9649, 2.3 to 2.7); EXIF, XMP and unknown ones are dropped. */
const needed = new Set(["VP8 ", "VP8L", "VP8X", "ALPH", "ICCP", "ANIM", "ANMF"]);
/** Flags of the chunk VP8X that announce EXIF and XMP (RFC 9649, 2.7). */
const ANNOUNCED = 0x08 | 0x04;

/**
 * A WebP without EXIF, XMP, unknown chunks and whatever follows its end. The picture stays as it is, to the bit.
 *
 * @throws Broken where a chunk reaches past the end
 */
export function stripWebp(bytes: Buffer): Buffer {
  const end = 8 + bytes.readUInt32LE(4);
  if (end > bytes.length) throw new Broken("it ends before the picture does");
  const kept: Buffer[] = [];
  let at = 12;
  while (at + 8 <= end) {
    const type = bytes.toString("latin1", at, at + 4);
    const length = bytes.readUInt32LE(at + 4);
    // Chunks are padded to an even length.
    const next = at + 8 + length + (length % 2);
    if (at + 8 + length > end) throw new Broken("it ends before the picture does");
    const chunk = Buffer.from(bytes.subarray(at, Math.min(next, end)));
    if (type === "VP8X" && chunk.length > 8) chunk[8] = (chunk[8] ?? 0) & ~ANNOUNCED;
    if (needed.has(type)) kept.push(chunk);
    at = next;
  }
  const body = Buffer.concat(kept);
  const head = Buffer.from(bytes.subarray(0, 12));
  head.writeUInt32LE(4 + body.length, 4);
  return Buffer.concat([head, body]);
}
