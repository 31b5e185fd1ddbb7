export type Paper = "A4" | "Letter";

/** The area content may use on a page, points from the lower left corner; the footer lies below `bottom`. */
export interface PageBox {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const sizes: Record<Paper, readonly [width: number, height: number]> = {
  A4: [595.28, 841.89],
  Letter: [612, 792],
};

export const papers = Object.keys(sizes);

/** The left margin is wider: margin marks stand there, and the holes of a binder. */
export function pageBox(paper: Paper): PageBox {
  const [width, height] = sizes[paper];
  return { width, height, left: 36, right: width - 24, top: height - 22, bottom: 38 };
}

/** The same for a scrutineering sheet, which uses all that a printer reaches. */
export function sheetBox(paper: Paper): PageBox {
  const box = pageBox(paper);
  return { ...box, top: box.height - 19, bottom: 31 };
}
