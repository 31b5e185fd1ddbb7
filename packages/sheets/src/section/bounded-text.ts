import type { Face } from "../font/face";
import { block, type Line } from "../layout/row";

export interface Bounds {
  readonly face: Face;
  readonly size: number;
  readonly width: number;
  /** Most lines the place has room for. */
  readonly most: number;
}

/**
 * Texts of a block whose height has an end. One that does not fit is broken off with an ellipsis in its place and
 * kept, to be printed whole below the block: nothing of a record is dropped because it is long.
 */
export class BoundedText {
  private readonly whole: { readonly label: string; readonly text: string }[] = [];

  lines(label: string, text: string, { face, size, width, most }: Bounds): Line[] {
    const lines = block(face, size, text, width);
    if (lines.length <= most) return lines;
    this.keep(label, text);
    const broken = lines[most - 1]?.spans[0]?.text ?? "";
    const last = { face, size, text: `${broken.slice(0, -2).trimEnd()}…` };
    return [...lines.slice(0, most - 1), { size, spans: [last] }];
  }

  keep(label: string, text: string): void {
    this.whole.push({ label, text });
  }

  /** What was broken off, each with its label. */
  below(face: Face, size: number, width: number): Line[] {
    return this.whole.flatMap(({ label, text }) => block(face, size, `${label}, in full: ${text}`, width));
  }
}
