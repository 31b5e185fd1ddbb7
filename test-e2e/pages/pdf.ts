import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** What an independent reader finds in a PDF. */
export interface ReadPdf {
  readonly pages: readonly string[];
  readonly bookmarks: readonly string[];
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(items.map((item) => ("str" in item ? item.str : "")).join(" "));
  }
  const outline = (await document.getOutline()) ?? [];
  await document.destroy();
  return { pages, bookmarks: outline.map(({ title }) => title) };
}
