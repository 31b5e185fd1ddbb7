import { type Face, textWidth } from "../font/face";
import { drawBlock, type Line } from "./row";
import type { Drawing } from "./sheet-context";
import { rule, type } from "./style";

export interface Heading {
  readonly title: string;
  /** A quieter word after the title. */
  readonly note?: string;
}

const height = 17;

/** A section's heading over a full-width rule. */
export function drawHeading({ flow, faces }: Drawing, { title, note = "" }: Heading): void {
  const { page, box, y } = flow;
  const baseline = y - 12.5;
  page.mark("H2", () =>
    page.text({ face: faces.bold, size: type.heading, x: box.left, y: baseline, text: title }),
  );
  const x = box.left + textWidth(faces.bold, type.heading, title) + 8;
  if (note !== "")
    page.mark("P", () => page.text({ face: faces.regular, size: type.text, x, y: baseline, text: note }));
  page.line([box.left, y - height, box.right, y - height], { stroke: rule.heavy });
  flow.y = y - height;
}

export const headingHeight = height;

export interface Column {
  readonly x: number;
  readonly text: string;
  readonly align?: "left" | "centre";
}

/** Names over a table's columns, in fine print. */
export function drawColumns({ flow, faces }: Drawing, columns: readonly Column[]): void {
  const { page, box, y } = flow;
  for (const { x, text, align = "left" } of columns) {
    page.text({ face: faces.regular, size: type.fine, x, y: y - 8.2, text, align });
  }
  page.line([box.left, y - 11, box.right, y - 11], { stroke: rule.hair });
  flow.y = y - 11;
}

/** A paragraph across the page. */
export function drawParagraph(context: Drawing, lines: readonly Line[], gap = 4): void {
  const { flow } = context;
  let rest = lines;
  while (rest.length > 0) {
    flow.ensure(14 + gap);
    const size = rest[0]?.size ?? type.body;
    const room = Math.max(1, Math.floor((flow.free - gap) / (size * 1.2)));
    flow.y = drawBlock(flow.page, rest.slice(0, room), flow.box.left, flow.y - gap);
    rest = rest.slice(room);
  }
}

/** A label in fine print over its value, wrapped; answers the lower edge. */
export function drawField(
  { flow, faces }: Drawing,
  place: { readonly x: number; readonly top: number; readonly label: string },
  lines: readonly Line[],
): number {
  const { x, top, label } = place;
  flow.page.text({ face: faces.regular, size: type.fine, x, y: top - 6, text: label });
  return drawBlock(flow.page, lines.length > 0 ? lines : [dash(faces.regular)], x, top - 8);
}

const dash = (face: Face): Line => ({ size: type.body, spans: [{ face, size: type.body, text: "–" }] });
