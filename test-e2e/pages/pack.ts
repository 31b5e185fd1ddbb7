import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** What an independent reader finds in a PDF. */
export interface ReadPdf {
  /** Text of each page, in drawing order, blanks and line ends made one blank. */
  readonly pages: readonly string[];
  readonly bookmarks: readonly string[];
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    const text = items.map((item) => ("str" in item ? item.str : "")).join(" ");
    pages.push(text.replace(/\s+/g, " ").replace(/ ([,:;])/g, "$1"));
  }
  const outline = (await document.getOutline()) ?? [];
  await document.destroy();
  return { pages, bookmarks: outline.map(({ title }) => title) };
}

/** One car's sheet in a pack. */
export interface PackSheet {
  readonly number: string;
  readonly pages: readonly string[];
}

/** The sheets of a pack, told apart by the foot of each page: "No. 12 · page 2 of 4". */
export function sheetsOf({ pages }: ReadPdf): readonly PackSheet[] {
  const sheets: { readonly number: string; readonly pages: string[] }[] = [];
  for (const [index, text] of pages.entries()) {
    const [, number, page, of] = /No\. (\S+) · page (\d+) of (\d+)/.exec(text) ?? [];
    if (number === undefined)
      throw new Error(`page ${index + 1} of the file has no foot: "${text.slice(-80)}"`);
    if (page === "1") sheets.push({ number, pages: [] });
    const sheet = sheets.at(-1);
    if (sheet?.number !== number || String(sheet.pages.length + 1) !== page)
      throw new Error(`page ${index + 1} of the file is "No. ${number} · page ${page}", out of turn`);
    sheet.pages.push(text);
    const next = pages[index + 1];
    const last = next === undefined || / page 1 of \d+/.test(next);
    if (last && page !== of) throw new Error(`the sheet of number ${number} ends with page ${page} of ${of}`);
  }
  return sheets;
}
