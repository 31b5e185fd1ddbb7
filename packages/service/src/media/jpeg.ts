import { Broken } from "./broken";

/** Markers that stand alone, without a length (ITU-T T.81, table B.1): TEM, RST0 to RST7, SOI. */
const alone = (marker: number) => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);
const EOI = 0xd9;
const SOS = 0xda;
const COM = 0xfe;

/** What the picture needs of the application segments: its density, its colour profile, how its colours are coded. */
function isNeeded(marker: number, segment: Buffer): boolean {
  if (marker === COM) return false;
  if (marker < 0xe0 || marker > 0xef) return true;
  const says = (text: string) => segment.subarray(4, 4 + text.length).toString("latin1") === text;
  if (marker === 0xe0) return says("JFIF\0");
  if (marker === 0xe2) return says("ICC_PROFILE\0");
  return marker === 0xee && says("Adobe");
}

/** Where coded data ends: at the next marker that is neither a stuffed byte nor a restart. */
function endOfScan(bytes: Buffer, from: number): number {
  let at = from;
  for (;;) {
    at = bytes.indexOf(0xff, at);
    if (at < 0 || at + 1 >= bytes.length) throw new Broken("it ends before the picture does");
    const next = bytes[at + 1] ?? 0;
    if (next !== 0x00 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
    at += next === 0xff ? 1 : 2;
  }
}

/**
 * A JPEG (ITU-T T.81, annex B) without EXIF, XMP, IPTC, comments, embedded previews, further pictures and whatever
 * follows its end. The coded picture stays as it is, to the bit; so do its colour profile and density.
 *
 * @throws Broken where a segment reaches past the end, or the end never comes
 */
export function stripJpeg(bytes: Buffer): Buffer {
  const kept: Buffer[] = [bytes.subarray(0, 2)];
  let at = 2;
  for (;;) {
    if (bytes[at] !== 0xff) throw new Broken(`there is no marker at byte ${at}`);
    // A marker may be preceded by any number of fill bytes.
    while (bytes[at + 1] === 0xff) at += 1;
    const marker = bytes[at + 1];
    if (marker === undefined) throw new Broken("it ends before the picture does");
    if (marker === EOI) return Buffer.concat([...kept, bytes.subarray(at, at + 2)]);
    if (alone(marker)) {
      kept.push(bytes.subarray(at, at + 2));
      at += 2;
      continue;
    }
    const length = at + 4 <= bytes.length ? bytes.readUInt16BE(at + 2) : 0;
    const end = at + 2 + length;
    if (length < 2 || end > bytes.length) throw new Broken("it ends before the picture does");
    const segment = bytes.subarray(at, end);
    if (isNeeded(marker, segment)) kept.push(segment);
    at = end;
    if (marker !== SOS) continue;
    const scanEnd = endOfScan(bytes, at);
    kept.push(bytes.subarray(at, scanEnd));
    at = scanEnd;
  }
}
