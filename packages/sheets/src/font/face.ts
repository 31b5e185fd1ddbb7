import { readFileSync } from "node:fs";
import { resolveFontFile } from "./font-file";
import { readTrueType, type TrueTypeFile } from "./truetype-file";

/** One weight of the sheet's typeface, parsed once per process. */
export interface Face {
  /** Name in the page resources. */
  readonly name: "F1" | "F2";
  readonly postScriptName: string;
  /** Thickness of a stem, thousandths of the size, for viewers that have to imitate the face. */
  readonly stem: number;
  readonly file: TrueTypeFile;
  /** Advance per UTF-16 code unit, in thousandths of the type size; 0 where the font has no shape. */
  readonly advances: Uint16Array;
  readonly has: (code: number) => boolean;
}

export interface Faces {
  readonly regular: Face;
  readonly bold: Face;
}

const codeUnits = 0x10000;

function loadFace(face: Pick<Face, "name" | "postScriptName" | "stem">, path: string): Face {
  const file = readTrueType(readFileSync(resolveFontFile(path)));
  const advances = new Uint16Array(codeUnits);
  const known = new Uint8Array(codeUnits);
  for (const [code, glyph] of file.glyphs) {
    if (code < 0x20) continue;
    advances[code] = Math.round((file.advance(glyph) * 1000) / file.unitsPerEm);
    known[code] = 1;
  }
  return { ...face, file, advances, has: (code) => known[code] === 1 };
}

let loaded: Faces | undefined;

/** Both weights of Source Sans 3; read from its npm package at first use and kept. */
export function loadFaces(): Faces {
  loaded ??= {
    regular: loadFace(
      { name: "F1", postScriptName: "SourceSans3-Regular", stem: 84 },
      "400Regular/SourceSans3_400Regular.ttf",
    ),
    bold: loadFace(
      { name: "F2", postScriptName: "SourceSans3-SemiBold", stem: 124 },
      "600SemiBold/SourceSans3_600SemiBold.ttf",
    ),
  };
  return loaded;
}

/** Width in points of a text set in a face and size. */
export function textWidth(face: Face, size: number, text: string): number {
  let units = 0;
  for (let at = 0; at < text.length; at++) units += face.advances[text.charCodeAt(at)] ?? 0;
  return (units * size) / 1000;
}
