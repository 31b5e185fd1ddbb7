import type { ContentWriter } from "../content/content-writer";
import { type Face, textWidth } from "../font/face";
import { type Span, wrap, wrapSpans } from "../text/wrap";
import type { PageFlow } from "./page-flow";
import { ascent, leading, rule } from "./style";

/** A line of text; the tallest span gives its size. */
export interface Line {
  readonly size: number;
  readonly spans: readonly Span[];
  /** To the next line, in sizes; as everywhere where none is given. */
  readonly leading?: number;
}

/** Lines of text at a place across the page. */
export interface Cell {
  readonly x: number;
  readonly lines: readonly Line[];
}

export interface Row {
  readonly cells: readonly Cell[];
  /** Least height, points. */
  readonly minimum?: number;
  /** Space above the first line and below the last. */
  readonly padding?: number;
  /** Draws a hairline under the row. */
  readonly ruled?: boolean;
  /** Draws what is not text: marks, brackets, boxes. */
  readonly decorate?: (page: ContentWriter, top: number, height: number) => void;
}

/** A text broken into lines of a width. */
export function block(face: Face, size: number, text: string, width: number): Line[] {
  return wrap(face, size, text, width).map((line) => ({ size, spans: [{ face, size, text: line }] }));
}

/** Spans of different face and size run on in one paragraph. */
export function runOn(spans: readonly Span[], width: number): Line[] {
  const lines = wrapSpans(
    spans.filter((span) => span.text !== ""),
    width,
  );
  return lines.map((line) => ({ size: Math.max(...line.map((span) => span.size)), spans: line }));
}

export function blockHeight(lines: readonly Line[]): number {
  return lines.reduce((height, line) => height + line.size * (line.leading ?? leading), 0);
}

/** Draws lines downwards from `top`; answers the lower edge. */
export function drawBlock(page: ContentWriter, lines: readonly Line[], x: number, top: number): number {
  let y = top;
  for (const { size, spans, leading: own = leading } of lines) {
    const baseline = y - size * ascent;
    let at = x;
    for (const { face, size: spanSize, text } of spans) {
      page.text({ face, size: spanSize, x: at, y: baseline, text });
      if (spans.length > 1) at += textWidth(face, spanSize, text);
    }
    y -= size * own;
  }
  return y;
}

export function rowHeight({ cells, minimum = 0, padding = 3 }: Row): number {
  return Math.max(minimum, ...cells.map((cell) => blockHeight(cell.lines) + 2 * padding));
}

/** Draws a row where there is room for it; one taller than a page is carried over line by line. */
export function drawRow(flow: PageFlow, row: Row): void {
  const height = rowHeight(row);
  if (height > flow.capacity) {
    carryRow(flow, row);
    return;
  }
  flow.ensure(height);
  const { y: top, page } = flow;
  const padding = row.padding ?? 3;
  for (const cell of row.cells) drawBlock(page, cell.lines, cell.x, top - padding);
  row.decorate?.(page, top, height);
  flow.y = top - height;
  if (row.ruled !== false) ruleUnder(flow);
}

function carryRow(flow: PageFlow, row: Row): void {
  const padding = row.padding ?? 3;
  const rest = row.cells.map((cell) => ({ x: cell.x, lines: [...cell.lines] }));
  flow.ensure(60);
  row.decorate?.(flow.page, flow.y, Math.min(60, flow.free));
  while (rest.some((cell) => cell.lines.length > 0)) {
    const { y: top, page } = flow;
    const room = flow.free - 2 * padding;
    const bottoms = rest.map((cell) => {
      let used = 0;
      const fits = cell.lines.findIndex((line) => {
        used += line.size * leading;
        return used > room;
      });
      const now = cell.lines.splice(0, fits < 0 ? cell.lines.length : fits);
      return drawBlock(page, now, cell.x, top - padding);
    });
    flow.y = Math.min(...bottoms) - padding;
    if (rest.some((cell) => cell.lines.length > 0)) flow.next();
  }
  if (row.ruled !== false) ruleUnder(flow);
}

function ruleUnder({ page, box, y }: PageFlow): void {
  page.line([box.left, y, box.right, y], { stroke: rule.hair });
}
