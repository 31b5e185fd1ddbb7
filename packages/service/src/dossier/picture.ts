import sharp from "sharp";
import { type QuarterTurns, thumbnail } from "../media";
import type { ClubStore } from "../store";

/** A picture that goes into a dossier, by the content it is made of. */
export interface DossierFile {
  /** The piece of evidence. */
  readonly id: string;
  readonly sha256: string;
  readonly turns: QuarterTurns;
}

/** A small JPEG with its size in pixels. */
export interface DossierPicture {
  readonly jpeg: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Longer side, pixels: some 140 to the inch as the dossier prints them. */
const EDGE = 320;

/** The pictures of a dossier, one after another; one whose file is missing is left out, and the dossier says so by its box. */
export async function dossierPictures(
  store: ClubStore,
  files: readonly DossierFile[],
): Promise<ReadonlyMap<string, DossierPicture>> {
  const pictures = new Map<string, DossierPicture>();
  for (const { id, sha256, turns } of files) {
    const jpeg = await thumbnail(store, { sha256, edge: EDGE, turns, format: "jpeg" });
    if (!jpeg) continue;
    const { width, height } = await sharp(jpeg).metadata();
    pictures.set(id, { jpeg, width, height });
  }
  return pictures;
}
