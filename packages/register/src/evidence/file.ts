/** Bounds of what is taken in as evidence; a refusal quotes them. */
export const evidenceLimits = {
  /** Bytes of one file. */
  fileBytes: 40_000_000,
  /** Files of one request. */
  files: 20,
  /** Bytes of one request, all files together. */
  requestBytes: 200_000_000,
  /** Width times height of a picture. */
  pixels: 60_000_000,
  /** Characters. */
  caption: 300,
  locus: 60,
  reason: 500,
  fileName: 120,
} as const;

/** Edges of the pictures made for pages: the longer side of either, pixels. */
export const thumbnailEdges = [320, 1280] as const;
export type ThumbnailEdge = (typeof thumbnailEdges)[number];

/** What is taken in, by what is found in the content. */
export const evidenceMedia = {
  "image/jpeg": { name: "JPEG", extension: "jpg", endings: ["jpg", "jpeg", "jpe", "jfif"] },
  "image/png": { name: "PNG", extension: "png", endings: ["png"] },
  "image/webp": { name: "WebP", extension: "webp", endings: ["webp"] },
  "image/avif": { name: "AVIF", extension: "avif", endings: ["avif"] },
  "image/tiff": { name: "TIFF", extension: "tif", endings: ["tif", "tiff"] },
  "application/pdf": { name: "PDF", extension: "pdf", endings: ["pdf"] },
} as const;
export type EvidenceMedia = keyof typeof evidenceMedia;

/** Whether a media type is one that is taken in. */
export function isEvidenceMedia(mediaType: string): mediaType is EvidenceMedia {
  return Object.hasOwn(evidenceMedia, mediaType);
}

/** Whether a media type is a picture that thumbnails can be made of. */
export function isPicture(mediaType: string): boolean {
  return isEvidenceMedia(mediaType) && mediaType !== "application/pdf";
}

/** What no file name of ours has: controls, marks that turn the direction of writing, what folders are parted by. */
const unfit = /[\p{Cc}\p{Zl}\p{Zp}\u061C\u200B-\u200F\u202A-\u202E\u2060-\u2069\uFEFF"<>|?*:]|\p{Cs}/gu;

/**
 * A file name as it is kept: without folders, without characters that mislead, at most 120 characters, and with the
 * ending of what the file is.
 *
 * @param mediaType found in the content
 * @example evidenceFileName("C:\\photos\\gpj.\u202Ebar.html", "image/jpeg") // => "gpj.bar.html.jpg"
 */
export function evidenceFileName(given: string, mediaType: EvidenceMedia): string {
  const { extension, endings } = evidenceMedia[mediaType];
  const last = given.split(/[/\\]/).at(-1) ?? "";
  const clean = last
    .normalize("NFC")
    .replace(unfit, "")
    .replace(/\s+/g, " ")
    .replace(/^[.\s]+/, "")
    .trim();
  const known: readonly string[] = endings;
  const dot = clean.lastIndexOf(".");
  const stem = known.includes(clean.slice(dot + 1).toLowerCase()) && dot > 0 ? clean.slice(0, dot) : clean;
  const ending = stem === clean ? extension : clean.slice(dot + 1);
  const short = cut(stem, evidenceLimits.fileName - ending.length - 1).replace(/[.\s]+$/, "");
  return `${short === "" ? "unnamed" : short}.${ending}`;
}

/** The first so many code units, no character halved. */
function cut(text: string, room: number): string {
  const last = text.charCodeAt(room - 1);
  return text.slice(0, text.length > room && last >= 0xd800 && last <= 0xdbff ? room - 1 : room);
}
