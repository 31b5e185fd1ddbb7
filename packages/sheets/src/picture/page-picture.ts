import { createCanvas, loadImage } from "@napi-rs/canvas";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** Pixels a point: 90 dots an inch, at which text of eight points can still be read by who reviews it. */
const scale = 1.25;

/** A page in greys, one byte a pixel: the sheet must work in black and white. */
export interface PagePicture {
  readonly width: number;
  readonly height: number;
  readonly greys: Uint8Array;
}

/** Draws pages of a PDF as pdf.js sees them; glyphs as shapes, so that no font of the machine plays a part. */
export async function pagePictures(
  bytes: Uint8Array,
  pages: readonly number[],
): Promise<readonly PagePicture[]> {
  const task = getDocument({
    data: bytes.slice(),
    disableFontFace: true,
    useSystemFonts: false,
    isEvalSupported: false,
    verbosity: 0,
  });
  const document = await task.promise;
  const pictures: PagePicture[] = [];
  for (const number of pages) {
    const page = await document.getPage(number);
    const viewport = page.getViewport({ scale });
    const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
    const canvas = createCanvas(width, height);
    const context = canvas.getContext("2d");
    // pdf.js is typed for a browser's canvas; this one has the same methods.
    await page.render({ canvasContext: context as never, canvas: canvas as never, viewport }).promise;
    pictures.push({ width, height, greys: greysOf(context.getImageData(0, 0, width, height).data) });
    page.cleanup();
  }
  await task.destroy();
  return pictures;
}

/** Luminance after ITU-R BT.601, as printers and most viewers take it. */
function greysOf(rgba: Uint8ClampedArray): Uint8Array {
  const greys = new Uint8Array(rgba.length / 4);
  for (let at = 0; at < greys.length; at++) {
    const [red = 0, green = 0, blue = 0] = rgba.subarray(at * 4, at * 4 + 3);
    greys[at] = Math.round(0.299 * red + 0.587 * green + 0.114 * blue);
  }
  return greys;
}

export function pngOf({ width, height, greys }: PagePicture): Buffer {
  const canvas = createCanvas(width, height);
  const context = canvas.getContext("2d");
  const image = context.createImageData(width, height);
  greys.forEach((exact, at) => {
    // Sixteen greys: a third of the bytes, and far inside the tolerance.
    const grey = (exact >> 4) * 17;
    image.data.set([grey, grey, grey, 255], at * 4);
  });
  context.putImageData(image, 0, 0);
  return canvas.toBuffer("image/png");
}

export async function pictureOf(png: Buffer): Promise<PagePicture> {
  const image = await loadImage(png);
  const { width, height } = image;
  const context = createCanvas(width, height).getContext("2d");
  context.drawImage(image, 0, 0);
  return { width, height, greys: greysOf(context.getImageData(0, 0, width, height).data) };
}

/** Side of a patch compared as one, pixels: edges smoothed otherwise by another machine even out in it. */
const patch = 6;
/** Greys of 255 a patch's mean may differ by; a thin rule that is gone changes some forty. */
export const patchTolerance = 24;

/** Patches whose mean grey differs by more than the tolerance, as places in points from the upper left corner. */
export function differingPatches(one: PagePicture, other: PagePicture): readonly string[] {
  if (one.width !== other.width || one.height !== other.height)
    return [`${one.width} × ${one.height} pixels against ${other.width} × ${other.height}`];
  const places: string[] = [];
  for (let top = 0; top < one.height; top += patch) {
    for (let left = 0; left < one.width; left += patch) {
      if (Math.abs(meanAt(one, left, top) - meanAt(other, left, top)) > patchTolerance)
        places.push(`${Math.round(left / scale)}, ${Math.round(top / scale)}`);
    }
  }
  return places;
}

function meanAt({ width, height, greys }: PagePicture, left: number, top: number): number {
  let [sum, count] = [0, 0];
  for (let y = top; y < Math.min(height, top + patch); y++) {
    for (let x = left; x < Math.min(width, left + patch); x++) {
      sum += greys[y * width + x] ?? 0;
      count++;
    }
  }
  return sum / count;
}
