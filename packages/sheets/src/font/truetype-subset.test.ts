import { readFileSync } from "node:fs";
import fontkit from "@pdf-lib/fontkit";
import { describe, expect, test } from "vitest";
import { resolveFontFile } from "./font-file";
import { readTrueType } from "./truetype-file";
import { subsetTrueType } from "./truetype-subset";

// @pdf-lib/fontkit 1.1.1 is the second reader here: it reads fonts well, it only writes subsets of them badly.
const bytes = readFileSync(resolveFontFile("400Regular/SourceSans3_400Regular.ttf"));
const ours = readTrueType(bytes);
const theirs = fontkit.create(bytes);

describe("reading a font file", () => {
  test("finds the same characters and glyphs as fontkit does", () => {
    const basic = theirs.characterSet.filter(
      (code) => code < 0xffff && theirs.glyphForCodePoint(code).id !== 0,
    );
    expect([...ours.glyphs.keys()].sort((a, b) => a - b)).toEqual(basic.sort((a, b) => a - b));
    for (const code of basic) expect(ours.glyphs.get(code)).toBe(theirs.glyphForCodePoint(code).id);
  });

  test("finds the same measures as fontkit does", () => {
    for (const [, glyph] of ours.glyphs)
      expect(ours.advance(glyph)).toBe(theirs.getGlyph(glyph).advanceWidth);
    expect(ours.unitsPerEm).toBe(theirs.unitsPerEm);
    expect([ours.ascent, ours.descent, ours.capHeight, ours.xHeight]).toEqual([
      theirs.ascent,
      theirs.descent,
      theirs.capHeight,
      theirs.xHeight,
    ]);
  });

  test("refuses what is no TrueType file, naming the table it misses", () => {
    expect(() => readTrueType(new Uint8Array(64))).toThrow(
      /no "head" table; a TrueType \(\.ttf\) file is needed/,
    );
  });
});

describe("a subset", () => {
  const codes = [..."Scrutineering 0123456789 ±½ÅÞŁЩΩáñ"].map((character) => character.charCodeAt(0));
  const wanted = codes.map((code) => ours.glyphs.get(code) ?? 0);
  const { file, glyphOf } = subsetTrueType(ours, wanted);
  const read = fontkit.create(wrapped(file));

  test("draws every glyph as the whole font does, composed ones too", () => {
    for (const glyph of wanted) {
      const number = glyphOf.get(glyph) ?? -1;
      expect(read.getGlyph(number).path.toSVG()).toBe(theirs.getGlyph(glyph).path.toSVG());
      expect(read.getGlyph(number).advanceWidth).toBe(theirs.getGlyph(glyph).advanceWidth);
    }
  });

  test("has the glyphs asked for, what they are composed of, and no more", () => {
    expect(read.numGlyphs).toBe(glyphOf.size);
    expect(glyphOf.size).toBeLessThan(2 * new Set(wanted).size);
    expect(file.length).toBeLessThan(bytes.length / 20);
  });

  test("has a file checksum that comes out at the number OpenType 1.9 gives", () => {
    const view = new DataView(file.buffer);
    let sum = 0;
    for (let at = 0; at < file.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
    expect(sum).toBe(0xb1b0afba);
  });

  /** fontkit wants to be handed a Buffer. */
  function wrapped(data: Uint8Array): Uint8Array {
    return Buffer.from(data);
  }
});
