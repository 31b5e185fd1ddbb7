import { type EvidenceMedia, isEvidenceMedia } from "@trunnion/register";
import { fileTypeFromBuffer } from "file-type";

/** What a content is: one of what is taken in, or in words what else. */
export type Found =
  | { readonly mediaType: EvidenceMedia }
  | { readonly heic: true }
  | { readonly other: string };

const HEIC = /^image\/(heic|heif)(-sequence)?$/;

/** What text looks like; the whole range of ways to write a page that a browser would run. */
function textual(content: Buffer): string {
  const start = content
    .subarray(0, 1_000)
    .toString("latin1")
    .replace(/^\u00EF\u00BB\u00BF/, "")
    .trimStart();
  if (/^(<\?xml[^>]*>\s*)?(<!--[\s\S]*?-->\s*)*(<!DOCTYPE svg[^>]*>\s*)?<svg[\s>]/i.test(start))
    return "an SVG drawing";
  if (
    /^(<!--[\s\S]*?-->\s*)*<(!DOCTYPE html|html|head|body|script|iframe|img|a|p|div|meta|style|title)[\s>]/i.test(
      start,
    )
  )
    return "an HTML page";
  if (start.startsWith("<?xml")) return "XML";
  return content.subarray(0, 1_000).includes(0) ? "of no known kind" : "text";
}

/** Tells what a content is by its first bytes; what its name or sender say does not count. */
export async function whatIs(content: Buffer): Promise<Found> {
  if (content.length === 0) return { other: "nothing: the file is empty" };
  const found = await fileTypeFromBuffer(content);
  // A TIFF cut off before its list of fields, which stands anywhere in it.
  const { length } = ["II*\0", "MM\0*"].filter((mark) => content.toString("latin1", 0, 4) === mark);
  if (!found && length > 0) return { mediaType: "image/tiff" };
  if (!found || found.mime === "application/xml") return { other: textual(content) };
  const { mime } = found;
  if (HEIC.test(mime)) return { heic: true };
  return isEvidenceMedia(mime) ? { mediaType: mime } : { other: mime };
}
