import { resolveFontFile } from "../src/font/font-file";
import type { ReadDocument } from "../src/sample/read-back";

interface Kit {
  registerFont(name: string, path: string): void;
  addPage(options: object): Kit;
  font(name: string): Kit;
  fontSize(size: number): Kit;
  text(text: string, x: number, y: number, options: object): Kit;
  rect(x: number, y: number, width: number, height: number): Kit;
  stroke(): Kit;
  on(event: "data" | "end", heard: (part: Uint8Array) => void): void;
  end(): void;
}

/** It comes without types; the few calls made are described above. */
const library: string = "pdfkit";
/** Boxes to cross on a page, as many as a page of checks has. */
const boxesOnPage = 220;

/** Every text of the sheet as read back, and as many boxes, drawn by pdfkit's calls; bytes written. */
export async function drawWithPdfkit(read: ReadDocument, cars: number): Promise<number> {
  const { default: PdfKit } = (await import(library)) as { default: new (options: object) => Kit };
  const document = new PdfKit({ autoFirstPage: false });
  document.registerFont("regular", resolveFontFile("400Regular/SourceSans3_400Regular.ttf"));
  let size = 0;
  const ended = new Promise<void>((resolve) => {
    document.on("data", (part) => {
      size += part.length;
    });
    document.on("end", () => resolve());
  });
  for (let car = 0; car < cars; car++) {
    for (const { width, height, items } of read.pages) {
      document.addPage({ size: [width, height], margin: 0 });
      document.font("regular");
      for (const { text, x, y, size: points } of items)
        document.fontSize(points).text(text, x, height - y - points, { lineBreak: false });
      for (let box = 0; box < boxesOnPage; box++)
        document.rect(36 + (box % 4) * 11, 100 + Math.floor(box / 4) * 11, 11, 11).stroke();
    }
  }
  document.end();
  await ended;
  return size;
}
