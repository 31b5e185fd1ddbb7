import { megabytes, type Words } from "./words";

/** What the service refuses about evidence, apart from the general refusals. `file` is the name as it was given, cut. */
export interface EvidenceRefusals {
  EVIDENCE_NOT_FOUND: { readonly evidence: string };
  EVIDENCE_TARGET_NOT_FOUND: { readonly target: string };
  /** An owner, and not his car; or what only the registrar may do. */
  EVIDENCE_NOT_YOURS: { readonly what: string };
  EVIDENCE_NO_FILE: Record<never, never>;
  EVIDENCE_TOO_MANY: { readonly limit: number };
  /** `bytes` were counted when it was refused; a browser that told the whole size is quoted instead. */
  EVIDENCE_TOO_LARGE: { readonly file: string; readonly bytes: number; readonly limit: number };
  EVIDENCE_CUT_OFF: Record<never, never>;
  EVIDENCE_NO_PICTURE: { readonly file: string; readonly found: string };
  EVIDENCE_HEIC: { readonly file: string };
  EVIDENCE_TOO_MANY_PIXELS: {
    readonly file: string;
    readonly width: number;
    readonly height: number;
    readonly limit: number;
  };
  EVIDENCE_BROKEN: { readonly file: string; readonly problem: string };
  EVIDENCE_WITHDRAWN: { readonly on: string; readonly reason: string };
  EVIDENCE_NOT_WITHDRAWN: Record<never, never>;
  EVIDENCE_LINKED_ALREADY: { readonly target: string };
  EVIDENCE_LAST_LINK: Record<never, never>;
  /** In the record, and not in the store. */
  EVIDENCE_FILE_MISSING: { readonly evidence: string };
}

const million = (pixels: number) => `${(pixels / 1e6).toFixed(pixels < 1e7 ? 1 : 0)} megapixels`;
const kinds = "JPEG, PNG, WebP, AVIF, TIFF or PDF";

export const evidenceWords: Words<EvidenceRefusals> = {
  EVIDENCE_NOT_FOUND: ({ evidence }) => ({
    what: `There is no photo or document "${evidence}" in this club.`,
    remedy: "Look for it on its car's page.",
  }),
  EVIDENCE_TARGET_NOT_FOUND: ({ target }) => ({
    what: `There is nothing "${target}" on this club's record that evidence could support.`,
    remedy: "It may have been corrected in the meantime: open the car's page again and choose there.",
  }),
  EVIDENCE_NOT_YOURS: ({ what }) => ({
    what: `You may not ${what}.`,
    remedy: "Keepers may for the cars they keep; else ask the registrar.",
  }),
  EVIDENCE_NO_FILE: () => ({
    what: "No file was chosen.",
    remedy: `Choose a photo or document: ${kinds}.`,
  }),
  EVIDENCE_TOO_MANY: ({ limit }) => ({
    what: `More than ${limit} files at once.`,
    remedy: `Send them ${limit} at a time. None was kept.`,
  }),
  EVIDENCE_TOO_LARGE: ({ file, bytes, limit }) => ({
    what: `${file}: ${megabytes(bytes)}; at most ${megabytes(limit)} is taken.`,
    remedy: "Save the picture smaller, or the document as several files. Nothing was kept.",
  }),
  EVIDENCE_CUT_OFF: () => ({
    what: "The upload ended before its end, or is no form of this page.",
    remedy: "Send it again. Nothing was kept.",
  }),
  EVIDENCE_NO_PICTURE: ({ file, found }) => ({
    what: `${file} is no photo or document that can be kept: its content is ${found}.`,
    remedy: `Save it as ${kinds}. What the name ends with does not count. Nothing was kept.`,
  }),
  EVIDENCE_HEIC: ({ file }) => ({
    what: `${file} is HEIC, which cannot be read here.`,
    remedy: "Send it as JPEG: the camera's settings offer the most compatible format. Nothing was kept.",
  }),
  EVIDENCE_TOO_MANY_PIXELS: ({ file, width, height, limit }) => ({
    what: `${file} is ${width} × ${height} pixels, ${million(width * height)}; at most ${million(limit)} are taken.`,
    remedy: "Save the picture smaller. Nothing was kept.",
  }),
  EVIDENCE_BROKEN: ({ file, problem }) => ({
    what: `${file} cannot be read: ${problem}.`,
    remedy: "Copy it again from where it came. Nothing was kept.",
  }),
  EVIDENCE_WITHDRAWN: ({ on, reason }) => ({
    what: `This file was withdrawn on ${on}: ${reason}`,
    remedy: "The registrar can bring it back.",
  }),
  EVIDENCE_NOT_WITHDRAWN: () => ({
    what: "This piece of evidence stands: it was not withdrawn, or was brought back already.",
    remedy: "Open its page again.",
  }),
  EVIDENCE_LINKED_ALREADY: ({ target }) => ({
    what: `It supports ${target} already.`,
    remedy: "Choose something else, or leave it as it is.",
  }),
  EVIDENCE_LAST_LINK: () => ({
    what: "It supports nothing else, and would be found nowhere.",
    remedy: "Link it to something first, or withdraw it.",
  }),
  EVIDENCE_FILE_MISSING: ({ evidence }) => ({
    what: `The file of "${evidence}" is not in the store.`,
    remedy: "Tell whoever runs this: it has to come back from a backup.",
  }),
};

/** File names in refusals are cut to this. */
export const quotedFileName = (name: string): string => {
  const clean = name.replace(
    /[\p{Cc}\p{Zl}\p{Zp}\u061C\u200B-\u200F\u202A-\u202E\u2060-\u2069\uFEFF]|\p{Cs}/gu,
    "",
  );
  const characters = [...clean];
  return characters.length > 60 ? `${characters.slice(0, 59).join("")}…` : clean === "" ? "the file" : clean;
};
