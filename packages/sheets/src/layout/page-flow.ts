import { ContentWriter } from "../content/content-writer";
import type { PageBox } from "./paper";

/** Longest sheet of one car, in pages; beyond it the model is at fault, and paper is not the answer. */
const mostPages = 100;

/** The pages of one car, filled from the top; a page that is full is followed by one with the identity strip. */
export class PageFlow {
  readonly pages: ContentWriter[] = [];
  page: ContentWriter;
  /** Upper edge of the free space. */
  y: number;
  /** Repeats a section's heading at the top of a further page. */
  onContinue: (() => void) | undefined;

  constructor(
    readonly box: PageBox,
    private readonly strip: { readonly height: number; readonly draw: (page: ContentWriter) => void },
    private readonly tagged = false,
    private readonly most = mostPages,
  ) {
    this.page = this.start();
    this.y = box.top;
  }

  /** Height a row can have at most and still fit on a further page, below strip and repeated headings. */
  get capacity(): number {
    return this.box.top - this.box.bottom - this.strip.height - 60;
  }

  /** Room on a further page, below its strip. */
  get furtherHeight(): number {
    return this.box.top - this.box.bottom - this.strip.height;
  }

  get free(): number {
    return this.y - this.box.bottom;
  }

  /** Makes sure that a height is free, on a further page if need be. */
  ensure(height: number): void {
    if (this.free < height) this.next();
  }

  next(): void {
    if (this.pages.length >= this.most) {
      throw new RangeError(
        `more than ${this.most} pages in one piece are refused; shorten the record, or print fewer cars`,
      );
    }
    this.page = this.start();
    this.strip.draw(this.page);
    this.y = this.box.top - this.strip.height;
    this.onContinue?.();
  }

  private start(): ContentWriter {
    const page = new ContentWriter(this.tagged);
    this.pages.push(page);
    return page;
  }
}
