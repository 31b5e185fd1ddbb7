import { createHash } from "node:crypto";
import type { PdfFile } from "../document/pdf-file";
import { numberText, type Ref, refText } from "../document/pdf-text";
import { type PackedStream, pack } from "../document/stream";
import type { Face } from "./face";
import { codePointsOf } from "./repertoire";
import { subsetTrueType } from "./truetype-subset";

interface BakedSubset {
  readonly name: string;
  readonly file: PackedStream;
  readonly glyphOfCode: PackedStream;
  readonly toUnicode: PackedStream;
  /** The `W` array, written out. */
  readonly widths: string;
}

const baked = new Map<string, BakedSubset>();

/**
 * Writes one face into a file as a composite font. Codes on the page are UTF-16 units: a `CIDToGIDMap` leads from them
 * to the subset's glyphs. Text copied or searched is therefore exactly what was drawn, also where two characters share
 * a glyph, and the same text has the same codes in every document.
 */
export function writeFont(pdf: PdfFile, ref: Ref, face: Face, used: number): void {
  const subset = bakedSubset(face, used);
  const { file } = face;
  const scale = 1000 / file.unitsPerEm;
  const box = file.bounds.map((edge) => numberText(edge * scale)).join(" ");
  const measures = [
    `/Ascent ${numberText(file.ascent * scale)}/Descent ${numberText(file.descent * scale)}`,
    `/CapHeight ${numberText(file.capHeight * scale)}/XHeight ${numberText(file.xHeight * scale)}`,
  ].join("");
  const fontFile = refText(pdf.addStream(subset.file));
  const descriptor = pdf.add(
    `<</Type/FontDescriptor/FontName/${subset.name}/Flags 4/FontBBox[${box}]/ItalicAngle 0${measures}/StemV ${face.stem}/FontFile2 ${fontFile}>>`,
  );
  const glyphs = refText(pdf.addStream(subset.glyphOfCode));
  const system = "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>";
  const descendant = pdf.add(
    `<</Type/Font/Subtype/CIDFontType2/BaseFont/${subset.name}${system}/FontDescriptor ${refText(descriptor)}/DW 0/W${subset.widths}/CIDToGIDMap ${glyphs}>>`,
  );
  const unicode = refText(pdf.addStream(subset.toUnicode));
  pdf.put(
    ref,
    `<</Type/Font/Subtype/Type0/BaseFont/${subset.name}/Encoding/Identity-H/DescendantFonts[${refText(descendant)}]/ToUnicode ${unicode}>>`,
  );
}

/** Subsets depend on face and groups alone, of which there are few, so each is made once per process. */
function bakedSubset(face: Face, used: number): BakedSubset {
  const key = `${face.name}/${used}`;
  const known = baked.get(key) ?? bake(face, used);
  baked.set(key, known);
  return known;
}

function bake(face: Face, used: number): BakedSubset {
  const points = codePointsOf(face, used);
  const glyphs = points.map((point) => face.file.glyphs.get(point) ?? 0);
  const { file, glyphOf } = subsetTrueType(face.file, glyphs);
  const glyphOfCode = new DataView(new ArrayBuffer(((points.at(-1) ?? 0) + 1) * 2));
  points.forEach((point, at) => {
    glyphOfCode.setUint16(point * 2, glyphOf.get(glyphs[at] ?? 0) ?? 0);
  });
  return {
    name: `${tagOf(file)}+${face.postScriptName}`,
    file: pack(file, `/Length1 ${file.length}`),
    glyphOfCode: pack(new Uint8Array(glyphOfCode.buffer)),
    toUnicode: pack(toUnicode(points)),
    widths: widthArray(face, points),
  };
}

/** Runs of consecutive codes with their advances, as the `W` array wants them. */
function widthArray(face: Face, points: readonly number[]): string {
  const runs: { readonly first: number; readonly widths: number[] }[] = [];
  let next = -1;
  for (const point of points) {
    if (point !== next) runs.push({ first: point, widths: [] });
    runs.at(-1)?.widths.push(face.advances[point] ?? 0);
    next = point + 1;
  }
  return `[${runs.map(({ first, widths }) => `${first}[${widths.join(" ")}]`).join(" ")}]`;
}

/** Codes are UTF-16 already; one range per row of 256, since a range may not cross one. */
function toUnicode(points: readonly number[]): Uint8Array {
  const rows = [...new Set(points.map((point) => point >> 8))];
  const hex = (byte: number) => byte.toString(16).padStart(2, "0");
  const ranges = rows.map((row) => `<${hex(row)}00> <${hex(row)}ff> <${hex(row)}00>`);
  const sections: string[] = [];
  for (let at = 0; at < ranges.length; at += 100) {
    const some = ranges.slice(at, at + 100);
    sections.push(`${some.length} beginbfrange`, ...some, "endbfrange");
  }
  const lines = [
    "/CIDInit /ProcSet findresource begin",
    "12 dict begin",
    "begincmap",
    "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def",
    "/CMapName /Adobe-Identity-UCS def",
    "/CMapType 2 def",
    "1 begincodespacerange",
    "<0000> <ffff>",
    "endcodespacerange",
    ...sections,
    "endcmap",
    "CMapName currentdict /CMap defineresource pop",
    "end",
    "end",
  ];
  return Buffer.from(lines.join("\n"), "latin1");
}

/** The six capitals that mark a subset font, taken from its bytes. */
function tagOf(file: Uint8Array): string {
  const digest = createHash("sha256").update(file).digest();
  return [...digest.subarray(0, 6)].map((byte) => String.fromCharCode(65 + (byte % 26))).join("");
}
