import type { Face } from "../font/face";
import { block, type Line } from "../layout/row";

export interface Bounds {
  readonly face: Face;
  readonly size: number;
  readonly width: number;
  /** Most lines the place has room for. */
  readonly most: number;
}

/** The first lines of a text, the last of them with an ellipsis where there was more. */
export function firstLines(text: string, { face, size, width, most }: Bounds): Line[] {
  const lines = block(face, size, text, width);
  return lines.length <= most ? lines : broken(lines, { face, size, width, most });
}

function broken(lines: readonly Line[], { face, size, most }: Bounds): Line[] {
  const end = lines[most - 1]?.spans[0]?.text ?? "";
  const last = { face, size, text: `${end.slice(0, -2).trimEnd()}…` };
  return [...lines.slice(0, most - 1), { size, spans: [last] }];
}

/**
 * Texts of a block whose height has an end. One that does not fit is broken off with an ellipsis in its place and
 * kept, to be printed below the block up to a length; what is longer still says how much more the record holds.
 */
export class BoundedText {
  private readonly whole: { readonly label: string; readonly text: string }[] = [];

  /** @param longest characters of one text printed below the block */
  constructor(private readonly longest: number) {}

  lines(label: string, text: string, bounds: Bounds): Line[] {
    const lines = block(bounds.face, bounds.size, text, bounds.width);
    if (lines.length <= bounds.most) return lines;
    this.keep(label, text);
    return broken(lines, bounds);
  }

  keep(label: string, text: string): void {
    this.whole.push({ label, text });
  }

  /** What was broken off, each with its label. */
  below(face: Face, size: number, width: number): Line[] {
    return this.whole.flatMap(({ label, text }) => {
      const more = text.length - this.longest;
      const told =
        more > 0 ? `${text.slice(0, this.longest)}… (${more} characters more in the record)` : text;
      return block(face, size, `${label}, in full: ${told}`, width);
    });
  }
}
