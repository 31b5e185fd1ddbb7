import { createHash } from "node:crypto";
import {
  type EvidenceMedia,
  evidenceFileName,
  evidenceLimits,
  isPicture,
  quotedFileName,
  refused,
} from "@trunnion/register";
import { Broken } from "./broken";
import { makeThumbnail, readHead, unmirror } from "./decoder";
import { dayTaken } from "./exif";
import { whatIs } from "./found";
import { stripHeif } from "./heif";
import { stripJpeg } from "./jpeg";
import { stripPng } from "./png";
import { stripTiff } from "./tiff";
import { type QuarterTurns, turnsOfOrientation } from "./turn";
import { stripWebp } from "./webp";

/** A file as somebody sent it. */
export interface GivenFile {
  /** As the sender calls it; cleaned before it is kept. */
  readonly name: string;
  readonly content: Buffer;
  /** Leaves place, camera and all else in a picture, because whoever adds it asks for that. */
  readonly keepLocation: boolean;
}

/** A file ready to be kept. */
export interface PreparedFile {
  readonly fileName: string;
  readonly mediaType: EvidenceMedia;
  readonly content: Buffer;
  readonly sha256: string;
  readonly keepsLocation: boolean;
  readonly quarterTurns: QuarterTurns;
  /** Pixels as stored, before any turn; missing for a document. */
  readonly width?: number;
  readonly height?: number;
  /** ISO day by the camera's clock. */
  readonly taken?: string;
  /** The small picture that decoding it all left over: 320 pixels, upright. */
  readonly preview?: Buffer;
}

const strip: Readonly<Record<EvidenceMedia, (content: Buffer) => Buffer>> = {
  "image/jpeg": stripJpeg,
  "image/png": stripPng,
  "image/webp": stripWebp,
  "image/avif": stripHeif,
  "image/tiff": stripTiff,
  "application/pdf": (content) => content,
};
const decoders: Readonly<Record<EvidenceMedia, string>> = {
  "image/jpeg": "jpeg",
  "image/png": "png",
  "image/webp": "webp",
  "image/avif": "heif",
  "image/tiff": "tiff",
  "application/pdf": "",
};

/** Bytes at the end of a PDF in which its trailer has to stand (ISO 32000-2, 7.5.5, and what readers accept). */
const TRAILER = 2_048;

function requireWholePdf(content: Buffer): void {
  const end = content.subarray(-TRAILER).toString("latin1");
  if (!end.includes("startxref") || !end.includes("%%EOF"))
    throw new Broken("it ends before its table of contents");
}

async function preparePicture({ content, keepLocation, name }: GivenFile, mediaType: EvidenceMedia) {
  const head = await readHead(content);
  if (head.format !== decoders[mediaType])
    throw new Broken(`it begins as ${mediaType} and goes on as ${head.format}`);
  const { width, height } = head;
  if (width * height > evidenceLimits.pixels) {
    const file = quotedFileName(name);
    throw refused("EVIDENCE_TOO_MANY_PIXELS", { file, width, height, limit: evidenceLimits.pixels });
  }
  const taken = dayTaken(mediaType === "image/tiff" ? content : (head.exif ?? Buffer.of()));
  // In AVIF the turn is a property of the picture and done by the decoder; Exif's there counts for nothing.
  const turns = mediaType === "image/avif" ? 0 : turnsOfOrientation(head.orientation);
  const upright = turns === undefined ? await unmirror(content, { keepAll: keepLocation }) : content;
  const kept = keepLocation ? upright : strip[mediaType](upright);
  const quarterTurns = turns ?? 0;
  const preview = await makeThumbnail(kept, { edge: 320, turns: quarterTurns });
  const size = turns === undefined ? await readHead(kept) : head;
  return {
    content: kept,
    quarterTurns,
    width: size.width,
    height: size.height,
    preview,
    ...(taken === undefined ? {} : { taken }),
  };
}

/**
 * Makes a file ready to be kept: finds its type in its content, decodes it whole, takes out what it says of place, time
 * and camera without touching the picture. A document is kept as it is.
 *
 * @throws Refusal EVIDENCE_NO_PICTURE, EVIDENCE_HEIC, EVIDENCE_TOO_LARGE, EVIDENCE_TOO_MANY_PIXELS (before it is decoded),
 *   EVIDENCE_BROKEN
 */
export async function prepareFile(given: GivenFile): Promise<PreparedFile> {
  const { content, name, keepLocation } = given;
  const file = quotedFileName(name);
  const limit = evidenceLimits.fileBytes;
  if (content.length > limit) throw refused("EVIDENCE_TOO_LARGE", { file, bytes: content.length, limit });
  const found = await whatIs(content);
  if ("heic" in found) throw refused("EVIDENCE_HEIC", { file });
  if ("other" in found) throw refused("EVIDENCE_NO_PICTURE", { file, found: found.other });
  const { mediaType } = found;
  try {
    if (!isPicture(mediaType)) requireWholePdf(content);
    const made = isPicture(mediaType)
      ? await preparePicture(given, mediaType)
      : { content, quarterTurns: 0 as const };
    return {
      fileName: evidenceFileName(name, mediaType),
      mediaType,
      keepsLocation: keepLocation && isPicture(mediaType),
      sha256: createHash("sha256").update(made.content).digest("hex"),
      ...made,
    };
  } catch (error) {
    if (error instanceof Broken) throw refused("EVIDENCE_BROKEN", { file, problem: error.message });
    throw error;
  }
}
