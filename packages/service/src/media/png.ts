import { Broken } from "./broken";

/** Chunks that say how the picture looks (PNG third edition, W3C, 11.3 and 11.2); what is not here is dropped. */
const needed = new Set([
  ...["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "cHRM", "gAMA", "iCCP", "sBIT", "sRGB", "cICP", "mDCV", "cLLI"],
  ...["bKGD", "hIST", "pHYs", "sPLT"],
]);

/**
 * A PNG without texts, EXIF, times, private chunks and whatever follows its end. The picture stays as it is, to the bit.
 *
 * @throws Broken where a chunk reaches past the end, or the end never comes
 */
export function stripPng(bytes: Buffer): Buffer {
  const kept: Buffer[] = [bytes.subarray(0, 8)];
  let at = 8;
  while (at + 12 <= bytes.length) {
    const end = at + 12 + bytes.readUInt32BE(at);
    if (end > bytes.length) break;
    const type = bytes.toString("latin1", at + 4, at + 8);
    if (needed.has(type)) kept.push(bytes.subarray(at, end));
    if (type === "IEND") return Buffer.concat(kept);
    at = end;
  }
  throw new Broken("it ends before the picture does");
}
