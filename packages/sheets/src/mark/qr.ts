import { create } from "qrcode";
import type { ContentWriter } from "../content/content-writer";

/** Side of the symbol with its quiet zone, points: some 0.55 mm a module, which a phone reads from paper at a forearm. */
export const qrSide = 62;
/** ISO/IEC 18004 asks for four modules of white round the symbol; the page's own white gives two of them. */
const quiet = 2;

/** Draws a text as a QR code, level M; modules of a row that touch are one rectangle. */
export function drawQr(
  page: ContentWriter,
  text: string,
  { x, top }: { readonly x: number; readonly top: number },
): void {
  const { modules } = create(text, { errorCorrectionLevel: "M" });
  const { size } = modules;
  const unit = qrSide / (size + 2 * quiet);
  const two = (value: number) => String(Math.round(value * 100) / 100);
  const bars: string[] = [];
  for (let row = 0; row < size; row++) {
    let start = -1;
    for (let column = 0; column <= size; column++) {
      const dark = column < size && modules.get(row, column) === 1;
      if (dark && start < 0) start = column;
      if (dark || start < 0) continue;
      const left = x + (quiet + start) * unit;
      const bottom = top - (quiet + row + 1) * unit;
      bars.push(`${two(left)} ${two(bottom)} ${two((column - start) * unit)} ${two(unit)} re`);
      start = -1;
    }
  }
  page.path(bars.join(" "), { fill: "black" });
}
