/** Tables of a TrueType file that a PDF needs, read where they lie; Apple's and Microsoft's OpenType 1.9 layouts. */
export interface TrueTypeFile {
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
  /** xMin, yMin, xMax, yMax over all glyphs. */
  readonly bounds: readonly number[];
  /** Glyph of each character of the basic plane the font has; glyph 0 is not among them. */
  readonly glyphs: ReadonlyMap<number, number>;
  readonly advance: (glyph: number) => number;
  readonly leftBearing: (glyph: number) => number;
  readonly outline: (glyph: number) => Uint8Array;
  readonly table: (tag: string) => DataView | undefined;
}

/**
 * Reads a font file. Written here because `@pdf-lib/fontkit` 1.1.1 writes subsets of this family with every second
 * glyph broken (it keeps odd glyph lengths but short offsets, which count in twos), and is slow to load.
 *
 * @throws RangeError when a table that is needed is missing, or the outlines are not TrueType
 */
export function readTrueType(bytes: Uint8Array): TrueTypeFile {
  const tables = directory(new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  const need = (tag: string): DataView => {
    const found = tables.get(tag);
    if (found === undefined)
      throw new RangeError(`font file has no "${tag}" table; a TrueType (.ttf) file is needed`);
    return found;
  };
  const head = need("head");
  const hhea = need("hhea");
  const os2 = need("OS/2");
  const hmtx = need("hmtx");
  const metrics = hhea.getUint16(34);
  return {
    unitsPerEm: head.getUint16(18),
    ascent: hhea.getInt16(4),
    descent: hhea.getInt16(6),
    xHeight: os2.getInt16(86),
    capHeight: os2.getInt16(88),
    bounds: [36, 38, 40, 42].map((at) => head.getInt16(at)),
    glyphs: characterMap(need("cmap")),
    // Glyphs beyond the last full entry share its advance and have a bearing of their own.
    advance: (glyph) => hmtx.getUint16(Math.min(glyph, metrics - 1) * 4),
    leftBearing: (glyph) =>
      hmtx.getInt16(glyph < metrics ? glyph * 4 + 2 : metrics * 4 + (glyph - metrics) * 2),
    outline: outlines(need("glyf"), need("loca"), head.getInt16(50) === 1),
    table: (tag) => tables.get(tag),
  };
}

function directory(file: DataView): Map<string, DataView> {
  const tables = new Map<string, DataView>();
  for (let entry = 0; entry < file.getUint16(4); entry++) {
    const at = 12 + entry * 16;
    const tag = String.fromCharCode(...[0, 1, 2, 3].map((byte) => file.getUint8(at + byte)));
    tables.set(
      tag,
      new DataView(file.buffer, file.byteOffset + file.getUint32(at + 8), file.getUint32(at + 12)),
    );
  }
  return tables;
}

function outlines(glyf: DataView, loca: DataView, long: boolean): (glyph: number) => Uint8Array {
  const offset = (glyph: number) => (long ? loca.getUint32(glyph * 4) : loca.getUint16(glyph * 2) * 2);
  return (glyph) =>
    new Uint8Array(glyf.buffer, glyf.byteOffset + offset(glyph), offset(glyph + 1) - offset(glyph));
}

/** The Windows Unicode map, format 4: segments of codes with a delta, or an offset into a glyph array. */
function characterMap(cmap: DataView): Map<number, number> {
  const glyphs = new Map<number, number>();
  const start = unicodeMap(cmap);
  const twice = cmap.getUint16(start + 6);
  const ends = start + 14;
  for (let segment = 0; segment < twice; segment += 2) {
    const last = cmap.getUint16(ends + segment);
    const first = cmap.getUint16(ends + twice + 2 + segment);
    const delta = cmap.getUint16(ends + 2 * twice + 2 + segment);
    const offsetAt = ends + 3 * twice + 2 + segment;
    const offset = cmap.getUint16(offsetAt);
    for (let code = first; code <= last && code < 0xffff; code++) {
      const listed = offset === 0 ? code : cmap.getUint16(offsetAt + offset + (code - first) * 2);
      const glyph = listed === 0 && offset !== 0 ? 0 : (listed + delta) & 0xffff;
      if (glyph !== 0) glyphs.set(code, glyph);
    }
  }
  return glyphs;
}

function unicodeMap(cmap: DataView): number {
  for (let entry = 0; entry < cmap.getUint16(2); entry++) {
    const at = 4 + entry * 8;
    const offset = cmap.getUint32(at + 4);
    const windowsUnicode = cmap.getUint16(at) === 3 && cmap.getUint16(at + 2) === 1;
    if (windowsUnicode && cmap.getUint16(offset) === 4) return offset;
  }
  throw new RangeError("font file has no Windows Unicode character map of format 4");
}
