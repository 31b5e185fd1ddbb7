import type { TrueTypeFile } from "./truetype-file";

export interface TrueTypeSubset {
  readonly file: Uint8Array;
  /** New glyph number of each old one. */
  readonly glyphOf: ReadonlyMap<number, number>;
}

const component = { wordArguments: 0x1, scale: 0x8, more: 0x20, twoScales: 0x40, matrix: 0x80 } as const;

/** A font file with only some glyphs, and the parts those are composed of; glyph 0 always comes along. */
export function subsetTrueType(font: TrueTypeFile, wanted: Iterable<number>): TrueTypeSubset {
  const glyphOf = new Map<number, number>([[0, 0]]);
  const include = (glyph: number): number => {
    const known = glyphOf.get(glyph) ?? glyphOf.size;
    glyphOf.set(glyph, known);
    return known;
  };
  for (const glyph of wanted) include(glyph);
  const outlines: Uint8Array[] = [];
  // The map grows while it is walked: a composed glyph brings its parts.
  for (const glyph of glyphOf.keys()) outlines.push(renumbered(font.outline(glyph), include));
  return { file: assemble(font, [...glyphOf.keys()], outlines), glyphOf };
}

/** The outline with its components' glyph numbers changed; padded, as offsets want. */
function renumbered(outline: Uint8Array, include: (glyph: number) => number): Uint8Array {
  const copy = new Uint8Array(Math.ceil(outline.length / 4) * 4);
  copy.set(outline);
  const view = new DataView(copy.buffer);
  if (outline.length === 0 || view.getInt16(0) >= 0) return copy;
  let at = 10;
  for (let flags: number = component.more; (flags & component.more) !== 0; ) {
    flags = view.getUint16(at);
    view.setUint16(at + 2, include(view.getUint16(at + 2)));
    const transform =
      flags & component.matrix ? 8 : flags & component.twoScales ? 4 : flags & component.scale ? 2 : 0;
    at += 4 + (flags & component.wordArguments ? 4 : 2) + transform;
  }
  return copy;
}

function assemble(
  font: TrueTypeFile,
  glyphs: readonly number[],
  outlines: readonly Uint8Array[],
): Uint8Array {
  const loca = new DataView(new ArrayBuffer((glyphs.length + 1) * 4));
  const hmtx = new DataView(new ArrayBuffer(glyphs.length * 4));
  let offset = 0;
  glyphs.forEach((glyph, at) => {
    loca.setUint32(at * 4, offset);
    hmtx.setUint16(at * 4, font.advance(glyph));
    hmtx.setInt16(at * 4 + 2, font.leftBearing(glyph));
    offset += outlines[at]?.length ?? 0;
  });
  loca.setUint32(glyphs.length * 4, offset);
  const head = copyOf(font, "head");
  head.setUint32(8, 0);
  head.setInt16(50, 1);
  const hhea = copyOf(font, "hhea");
  hhea.setUint16(34, glyphs.length);
  const maxp = copyOf(font, "maxp");
  maxp.setUint16(4, glyphs.length);
  const tables: [string, Uint8Array][] = [
    ["glyf", Uint8Array.from(Buffer.concat(outlines))],
    ["head", bytesOf(head)],
    ["hhea", bytesOf(hhea)],
    ["hmtx", bytesOf(hmtx)],
    ["loca", bytesOf(loca)],
    ["maxp", bytesOf(maxp)],
  ];
  for (const tag of ["cvt ", "fpgm", "prep"]) {
    if (font.table(tag) !== undefined) tables.push([tag, bytesOf(copyOf(font, tag))]);
  }
  return writeFile(tables.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function copyOf(font: TrueTypeFile, tag: string): DataView {
  const table = font.table(tag);
  if (table === undefined) throw new RangeError(`font file has no "${tag}" table`);
  return new DataView(bytesOf(table).slice().buffer);
}

function bytesOf(view: DataView): Uint8Array {
  return new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
}

function writeFile(tables: readonly (readonly [tag: string, bytes: Uint8Array])[]): Uint8Array {
  const start = 12 + tables.length * 16;
  const padded = (length: number) => Math.ceil(length / 4) * 4;
  const file = new Uint8Array(tables.reduce((size, [, bytes]) => size + padded(bytes.length), start));
  const view = new DataView(file.buffer);
  const power = Math.floor(Math.log2(tables.length));
  view.setUint32(0, 0x00010000);
  [tables.length, 16 << power, power, tables.length * 16 - (16 << power)].forEach((word, at) => {
    view.setUint16(4 + at * 2, word);
  });
  let offset = start;
  tables.forEach(([tag, bytes], at) => {
    const entry = 12 + at * 16;
    file.set(Buffer.from(tag, "latin1"), entry);
    file.set(bytes, offset);
    view.setUint32(entry + 4, checksum(view, offset, padded(bytes.length)));
    view.setUint32(entry + 8, offset);
    view.setUint32(entry + 12, bytes.length);
    offset += padded(bytes.length);
  });
  const head = tables.findIndex(([tag]) => tag === "head");
  const headAt = view.getUint32(12 + head * 16 + 8);
  view.setUint32(headAt + 8, (0xb1b0afba - checksum(view, 0, file.length)) >>> 0);
  return file;
}

function checksum(view: DataView, from: number, length: number): number {
  let sum = 0;
  for (let at = from; at < from + length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}
