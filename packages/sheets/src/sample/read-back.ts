import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A piece of text as an independent reader places it: lower left corner, with descender, points. */
export interface ReadItem {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly size: number;
}

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly items: readonly ReadItem[];
  /** All text in drawing order, with single spaces. */
  readonly text: string;
}

export interface ReadDocument {
  readonly pages: readonly ReadPage[];
  readonly title: unknown;
  readonly language: unknown;
  readonly information: Readonly<Record<string, unknown>>;
  readonly viewer: unknown;
  /** Title of each bookmark and the index of its page. */
  readonly outline: readonly { readonly title: string; readonly page: number }[];
  readonly text: string;
}

/**
 * Reads a PDF with pdf.js, which shares no code with what drew it. Of a long file only the pages wanted are read;
 * the others have no items and no text.
 */
export async function readBack(
  bytes: Uint8Array,
  wanted: (index: number) => boolean = () => true,
): Promise<ReadDocument> {
  const task = getDocument({
    data: bytes.slice(),
    disableFontFace: true,
    isEvalSupported: false,
    verbosity: 0,
  });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let index = 0; index < document.numPages; index++) {
    const page = await document.getPage(index + 1);
    const { width, height } = page.getViewport({ scale: 1 });
    pages.push(wanted(index) ? await readPage(page) : { width, height, items: [], text: "" });
  }
  const outline: { title: string; page: number }[] = [];
  for (const item of (await document.getOutline()) ?? []) {
    const [target] = Array.isArray(item.dest) ? item.dest : [];
    outline.push({ title: item.title, page: await document.getPageIndex(target) });
  }
  const metadata = await document.getMetadata();
  const information = { ...metadata.info } as Record<string, unknown>;
  const read = {
    pages,
    outline,
    information,
    title: information.Title,
    language: information.Language,
    viewer: await document.getViewerPreferences(),
    text: pages.map((page) => page.text).join(" "),
  };
  await task.destroy();
  return read;
}

type Page = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>["promise"]>["getPage"]>>;

async function readPage(page: Page): Promise<ReadPage> {
  const { width, height } = page.getViewport({ scale: 1 });
  const content = await page.getTextContent();
  const items: ReadItem[] = [];
  let text = "";
  for (const item of content.items) {
    if (!("str" in item)) continue;
    text += `${item.str} `;
    if (item.str.trim() === "") continue;
    const [, , , size = 0, x = 0, baseline = 0] = item.transform as number[];
    // Figures stand on the line; letters may reach below it.
    const below = size * (/^[\d–]+$/.test(item.str) ? 0.02 : 0.2);
    items.push({
      text: item.str,
      x,
      y: baseline - below,
      width: item.width,
      height: size * 0.72 + below,
      size,
    });
  }
  page.cleanup();
  return { width, height, items, text: text.replace(/\s+/g, " ") };
}

/** Pairs of text items that lie on each other by more than a rounding. */
export function overlaps(page: ReadPage): string[] {
  const slack = 0.6;
  const found: string[] = [];
  const sorted = [...page.items].sort((a, b) => b.y - a.y);
  sorted.forEach((a, at) => {
    for (const b of sorted.slice(at + 1)) {
      if (b.y + b.height < a.y - 40) break;
      const apart =
        a.x + a.width <= b.x + slack ||
        b.x + b.width <= a.x + slack ||
        a.y + a.height <= b.y + slack ||
        b.y + b.height <= a.y + slack;
      if (!apart) found.push(`"${a.text}" at ${a.x.toFixed(1)},${a.y.toFixed(1)} on "${b.text}"`);
    }
  });
  return found;
}

/** Text items that reach beyond the page, or into the strip of it that printers cannot reach (12 points). */
export function outside(page: ReadPage, edge = 12): string[] {
  return page.items
    .filter(
      ({ x, y, width, height }) =>
        x < edge || y < edge || x + width > page.width - edge + 0.1 || y + height > page.height - edge,
    )
    .map(
      ({ text, x, y, width }) =>
        `"${text}" from ${x.toFixed(1)} to ${(x + width).toFixed(1)} at ${y.toFixed(1)}`,
    );
}
