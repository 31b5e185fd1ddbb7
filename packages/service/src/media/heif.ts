import { Broken } from "./broken";

/** Most items of one file: a photograph has a handful, one of tiles some hundreds. */
const ITEMS = 5_000;
/** Items that say something about the picture and are none: EXIF, XMP, links (ISO/IEC 23008-12, annex A; 14496-12, 8.11). */
const said = new Set(["Exif", "mime", "uri "]);

interface Box {
  readonly type: string;
  readonly from: number;
  readonly to: number;
}

/** Reads unsigned numbers one after another; ends where the file does. */
class Cursor {
  constructor(
    readonly bytes: Buffer,
    public at: number,
    readonly end: number,
  ) {}

  number(size: number): number {
    if (this.at + size > this.end) throw new Broken("it ends before what it names");
    const value =
      size === 0
        ? 0
        : size === 8
          ? Number(this.bytes.readBigUInt64BE(this.at))
          : this.bytes.readUIntBE(this.at, size);
    this.at += size;
    return value;
  }
}

/** The boxes between two places (ISO/IEC 14496-12, 4.2). */
function boxes(bytes: Buffer, from: number, to: number): readonly Box[] {
  const found: Box[] = [];
  let at = from;
  while (at + 8 <= to) {
    const cursor = new Cursor(bytes, at, to);
    const short = cursor.number(4);
    const type = bytes.toString("latin1", at + 4, at + 8);
    cursor.at += 4;
    const length = short === 1 ? cursor.number(8) : short === 0 ? to - at : short;
    if (length < cursor.at - at || at + length > to) throw new Broken("it ends before the picture does");
    found.push({ type, from: cursor.at, to: at + length });
    at += length;
  }
  return found;
}

/** Numbers of the items that are said about the picture (`iinf`, 14496-12, 8.11.6). */
function saidItems(bytes: Buffer, iinf: Box): ReadonlySet<number> {
  const cursor = new Cursor(bytes, iinf.from, iinf.to);
  const version = cursor.number(4) >>> 24;
  cursor.number(version === 0 ? 2 : 4);
  const items = boxes(bytes, cursor.at, iinf.to).flatMap(({ from, to }) => {
    const entry = new Cursor(bytes, from, to);
    const kind = entry.number(4) >>> 24;
    if (kind < 2) return [];
    const id = entry.number(kind === 2 ? 2 : 4);
    entry.number(2);
    return said.has(bytes.toString("latin1", entry.at, entry.at + 4)) ? [id] : [];
  });
  return new Set(items);
}

/** Blanks what those items hold (`iloc`, 14496-12, 8.11.3). */
function blank(bytes: Buffer, iloc: Box, idat: Box | undefined, items: ReadonlySet<number>): void {
  const cursor = new Cursor(bytes, iloc.from, iloc.to);
  const version = cursor.number(4) >>> 24;
  const sizes = cursor.number(2);
  const [offset, length, base] = [(sizes >> 12) & 15, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const index = version === 0 ? 0 : sizes & 15;
  const count = cursor.number(version < 2 ? 2 : 4);
  if (count > ITEMS) throw new Broken(`it has ${count} parts`);
  for (let item = 0; item < count; item += 1) {
    const id = cursor.number(version < 2 ? 2 : 4);
    const method = version === 0 ? 0 : cursor.number(2) & 15;
    cursor.number(2);
    const start = cursor.number(base) + (method === 1 ? (idat?.from ?? 0) : 0);
    for (let extents = cursor.number(2); extents > 0; extents -= 1) {
      cursor.number(index);
      const from = start + cursor.number(offset);
      const to = from + cursor.number(length);
      if (to > bytes.length) throw new Broken("it ends before what it names");
      if (items.has(id) && method < 2) bytes.fill(0, from, to);
    }
  }
}

/**
 * An AVIF whose EXIF and XMP are blanked where they stood; the picture stays as it is, to the bit. Its turn is a property
 * of the picture there, not of EXIF.
 *
 * @throws Broken where a box or item lies outside the file
 */
export function stripHeif(given: Buffer): Buffer {
  const bytes = Buffer.from(given);
  const meta = boxes(bytes, 0, bytes.length).find(({ type }) => type === "meta");
  if (!meta) throw new Broken("it has no list of its parts");
  // The box's version and flags stand before its parts.
  const parts = boxes(bytes, meta.from + 4, meta.to);
  const find = (type: string) => parts.find((box) => box.type === type);
  const [iinf, iloc] = [find("iinf"), find("iloc")];
  if (!iinf || !iloc) throw new Broken("it has no list of its parts");
  const items = saidItems(bytes, iinf);
  if (items.size > 0) blank(bytes, iloc, find("idat"), items);
  return bytes;
}
