import { evidenceLimits } from "@trunnion/register";
import sharp from "sharp";
import { Broken } from "./broken";
import type { QuarterTurns } from "./turn";

/** Pictures worked on at once: each may take some hundred megabytes for a moment. */
const AT_ONCE = 2;
/** Longest work on one picture, seconds. */
const SECONDS = 60;

// Only decoders of what is taken in: nothing else can be reached, whatever a content claims to be.
sharp.block({ operation: ["VipsForeignLoad"] });
sharp.unblock({
  operation: ["Jpeg", "Png", "Webp", "Heif", "Tiff"].map((format) => `VipsForeignLoad${format}`),
});

/** Lets so many work at once, in the order they came. */
class Gate {
  #free = AT_ONCE;
  readonly #waiting: (() => void)[] = [];

  async through<T>(work: () => Promise<T>): Promise<T> {
    if (this.#free > 0) this.#free -= 1;
    else await new Promise<void>((resolve) => this.#waiting.push(resolve));
    try {
      return await work();
    } finally {
      const next = this.#waiting.shift();
      if (next) next();
      else this.#free += 1;
    }
  }
}

const gate = new Gate();

/** What the head of a picture says, before anything is decoded. */
export interface Head {
  /** As the decoder calls it: jpeg, png, webp, heif, tiff. */
  readonly format: string;
  readonly width: number;
  readonly height: number;
  /** Exif's, 1 to 8; missing where the format says it otherwise, or not at all. */
  readonly orientation?: number;
  readonly exif?: Buffer;
}

const broken = (error: unknown): Broken => {
  const message = error instanceof Error ? error.message : "";
  const short = /premature end|truncated|end of (?:file|data|image)|unexpected end|incomplete/i.test(message);
  return new Broken(short ? "it ends before the picture does" : "the picture in it cannot be decoded");
};

/**
 * Reads the head only, so that a picture of any size costs nothing.
 *
 * @throws Broken
 */
export async function readHead(content: Buffer): Promise<Head> {
  try {
    const { format, width, height, orientation, exif } = await sharp(content, {
      limitInputPixels: false,
    }).metadata();
    return { format, width, height, ...(orientation ? { orientation } : {}), ...(exif ? { exif } : {}) };
  } catch (error) {
    throw broken(error);
  }
}

/** Opens a picture for decoding; the first page of several. What exceeds the limit is refused before it is decoded. */
function open(content: Uint8Array) {
  return sharp(content, {
    limitInputPixels: evidenceLimits.pixels,
    failOn: "error",
    sequentialRead: true,
  }).timeout({
    seconds: SECONDS,
  });
}

export interface ThumbnailInput {
  /** The longer side, pixels; a smaller picture stays as it is. */
  readonly edge: number;
  readonly turns: QuarterTurns;
  /** WebP for pages, JPEG for what cannot take that; WebP when left out. */
  readonly format?: "webp" | "jpeg";
}

/**
 * Decodes the whole of a picture and makes a small one of it, upright, in the colours of screens, with nothing said in it.
 *
 * @throws Broken
 */
export async function makeThumbnail(
  content: Uint8Array,
  { edge, turns, format = "webp" }: ThumbnailInput,
): Promise<Buffer> {
  return gate.through(async () => {
    try {
      const small = open(content)
        .rotate(turns * 90)
        .resize(edge, edge, { fit: "inside", withoutEnlargement: true });
      // Transparency has no place on paper.
      if (format === "jpeg")
        return await small.flatten({ background: "#fff" }).jpeg({ quality: 82 }).toBuffer();
      return await small.webp({ quality: 78 }).toBuffer();
    } catch (error) {
      throw broken(error);
    }
  });
}

/**
 * A mirrored picture put right by coding it anew, since no turn can: the only one that is not kept to the bit.
 *
 * @param keepAll leaves in what the file says of place and time
 * @throws Broken
 */
export async function unmirror(content: Buffer, { keepAll }: { readonly keepAll: boolean }): Promise<Buffer> {
  return gate.through(async () => {
    try {
      const upright = open(content).autoOrient();
      const said = keepAll ? upright.keepMetadata() : upright.keepIccProfile();
      const { format } = await sharp(content, { limitInputPixels: false }).metadata();
      if (format === "jpeg") return await said.jpeg({ quality: 95, chromaSubsampling: "4:4:4" }).toBuffer();
      if (format === "webp") return await said.webp({ quality: 95 }).toBuffer();
      return format === "tiff"
        ? await said.tiff({ compression: "lzw" }).toBuffer()
        : await said.png().toBuffer();
    } catch (error) {
      throw broken(error);
    }
  });
}
