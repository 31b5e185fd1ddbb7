import { type Face, textWidth } from "../font/face";

/** A stretch of text in one face and size. */
export interface Span {
  readonly face: Face;
  readonly size: number;
  readonly text: string;
}

const words = /\n|[^ \n]+ *| +/g;
/** Inside a word a line may end after a hyphen between letters and after a dash or middle dot, never in a fraction. */
const seams = /(?<=\p{L}-)(?=\p{L})|(?<=[–—·])(?=[^ ])/u;

/** Breaks a text into lines no wider than `width` points; a word wider than a line is cut where it must be. */
export function wrap(face: Face, size: number, text: string, width: number): string[] {
  if (text === "") return [];
  if (!text.includes("\n") && textWidth(face, size, text) <= width) return [text.trimEnd()];
  return wrapSpans([{ face, size, text }], width).map((line) => line.map((span) => span.text).join(""));
}

/** The same for a paragraph in which face and size change. */
export function wrapSpans(spans: readonly Span[], width: number): Span[][] {
  const setter = new LineSetter(width);
  for (const span of spans) {
    for (const word of span.text.match(words) ?? []) {
      if (word === "\n") setter.end();
      else setter.add(span, word);
    }
  }
  return setter.finish();
}

/** Fills lines word by word. */
class LineSetter {
  private readonly lines: Span[][] = [];
  private line: Span[] = [];
  private used = 0;

  constructor(private readonly width: number) {}

  add(span: Span, word: string): void {
    const bare = word.trimEnd();
    if (this.fits(span, bare)) {
      this.put(span, word);
      return;
    }
    const parts = word.split(seams);
    if (parts.length > 1) {
      for (const part of parts) this.add(span, part);
      return;
    }
    if (this.line.length > 0) this.end();
    if (bare === "") return;
    if (this.fits(span, bare)) this.put(span, word);
    else this.cut(span, word);
  }

  end(): void {
    const last = this.line.at(-1);
    if (last !== undefined) this.line[this.line.length - 1] = { ...last, text: last.text.trimEnd() };
    this.lines.push(this.line);
    this.line = [];
    this.used = 0;
  }

  finish(): Span[][] {
    if (this.line.length > 0) this.end();
    return this.lines;
  }

  private fits({ face, size }: Span, bare: string): boolean {
    return this.used + textWidth(face, size, bare) <= this.width + 0.01;
  }

  private put(span: Span, text: string): void {
    const last = this.line.at(-1);
    const joins = last !== undefined && last.face === span.face && last.size === span.size;
    if (joins) this.line[this.line.length - 1] = { ...span, text: last.text + text };
    else this.line.push({ ...span, text });
    this.used += textWidth(span.face, span.size, text);
  }

  /** A word no line can hold, by characters; at least one a line, so that it always ends. */
  private cut(span: Span, word: string): void {
    for (const character of word) {
      if (this.line.length > 0 && !this.fits(span, character)) this.end();
      this.put(span, character);
    }
  }
}

/** The largest size between two at which a text fits a width; the smaller one where it never does. */
export function fitSize(
  face: Face,
  text: string,
  fit: { readonly width: number; readonly largest: number; readonly smallest: number },
): number {
  const natural = textWidth(face, 1, text);
  const size = natural > 0 ? fit.width / natural : fit.largest;
  return Math.min(fit.largest, Math.max(fit.smallest, Math.floor(size * 10) / 10));
}

/** Shortens a text to a width, with an ellipsis; only where the whole text stands elsewhere on the sheet. */
export function shorten(face: Face, size: number, text: string, width: number): string {
  const line = text.replaceAll("\n", " ");
  if (textWidth(face, size, line) <= width) return line;
  const room = width - textWidth(face, size, "…");
  let used = 0;
  let at = 0;
  for (; at < line.length; at++) {
    used += ((face.advances[line.charCodeAt(at)] ?? 0) * size) / 1000;
    if (used > room) break;
  }
  return `${line.slice(0, at).trimEnd()}…`;
}
