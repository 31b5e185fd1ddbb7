import type { SheetModel } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import type { Faces } from "../font/face";
import { type Column, drawColumns, drawHeading } from "../layout/heading";
import { PageFlow } from "../layout/page-flow";
import type { PageBox } from "../layout/paper";
import { block, drawRow, type Line } from "../layout/row";
import type { Drawing } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { lostText, preparedText } from "../section/footer";
import { shorten } from "../text/wrap";

const stripHeight = 24;
/** Longest list, in pages: a station's list of the most cars a file takes. */
const mostPages = 2_000;

/** What a list that goes with an event's sheets is drawn on. */
export interface PackPlace {
  readonly box: PageBox;
  readonly faces: Faces;
  readonly prepared: Date;
  readonly tagged: boolean;
  readonly event: SheetModel["event"];
  readonly club: string;
  /** Characters that could not be printed. */
  readonly unprintable: number;
}

/** One list of a pack: its bookmark and its pages. */
export interface PackPart {
  readonly title: string;
  readonly pages: readonly ContentWriter[];
}

/** Draws a list on pages that each say of which event it is; `draw` fills them. */
export function packPart(place: PackPlace, title: string, draw: (drawing: Drawing) => void): PackPart {
  const { box, faces, event, club, prepared, unprintable, tagged } = place;
  const strip = (page: ContentWriter) => {
    const { top, left, right } = box;
    const text = [title, event.name, event.on].filter((part) => part !== "").join(", ");
    page.text({
      face: faces.bold,
      size: type.body,
      x: left,
      y: top - 10,
      text: shorten(faces.bold, type.body, text, right - left),
    });
    page.line([left, top - 17, right, top - 17], { stroke: rule.heavy });
  };
  const flow = new PageFlow(box, { height: stripHeight, draw: strip }, tagged, mostPages);
  const width = box.right - box.left;
  flow.page.mark("H1", () => {
    flow.y = drawLines(flow, block(faces.bold, type.event, `${title}, ${event.name}`, width));
  });
  const held = [event.on, event.venue, club, event.ruleSet].filter((part) => part !== "").join(" · ");
  flow.page.mark("P", () => {
    flow.y = drawLines(flow, block(faces.regular, type.text, held, width)) - 6;
  });
  draw({ flow, faces });
  flow.pages.forEach((page, at) => {
    const { left, right } = box;
    page.line([left, 28.5, right, 28.5], { stroke: rule.hair });
    const said = `prepared ${preparedText(prepared)} · ${club}`;
    const small = (y: number, text: string) =>
      page.text({ face: faces.regular, size: type.fine, x: left, y, text });
    small(21.5, shorten(faces.regular, type.fine, said, width - 130));
    if (unprintable > 0) small(14.2, lostText(unprintable));
    const text = `page ${at + 1} of ${flow.pages.length}`;
    page.text({ face: faces.bold, size: type.body, x: right, y: 16.5, text, align: "right" });
  });
  return { title, pages: flow.pages };
}

function drawLines(flow: PageFlow, lines: readonly Line[]): number {
  let y = flow.y;
  for (const { size, spans } of lines) {
    for (const { face, text } of spans)
      flow.page.text({ face, size, x: flow.box.left, y: y - size * 0.78, text });
    y -= size * 1.2;
  }
  return y;
}

/** A column of a list: its name and its share of the width, in points of an A4 page. */
export interface ListColumn {
  readonly name: string;
  readonly width: number;
  readonly bold?: boolean;
}

export interface ListRow {
  /** One text a column. */
  readonly cells: readonly string[];
  /** A line below, from the second column to the end. */
  readonly below?: string;
}

/** A list with its columns' names repeated on every page; long texts wrap, nothing is left out. */
export function drawList(
  drawing: Drawing,
  title: string,
  { columns, rows }: { readonly columns: readonly ListColumn[]; readonly rows: readonly ListRow[] },
): void {
  const { flow, faces } = drawing;
  const total = columns.reduce((sum, { width }) => sum + width, 0);
  const scale = (flow.box.right - flow.box.left) / total;
  let x = flow.box.left;
  const placed = columns.map((column) => {
    const at = { ...column, x, room: column.width * scale - 5 };
    x += column.width * scale;
    return at;
  });
  const names: readonly Column[] = placed.map(({ x: at, name }) => ({ x: at, text: name }));
  const head = (note: string) => {
    drawHeading(drawing, { title, note });
    drawColumns(drawing, names);
  };
  flow.ensure(60);
  head(`${rows.length}`);
  flow.onContinue = () => head("continued");
  const [, second] = placed;
  for (const { cells, below = "" } of rows) {
    const lines = placed.map(({ x: at, room, bold = false }, index) => ({
      x: at,
      lines: block(bold ? faces.bold : faces.regular, 8.6, cells[index] ?? "", room),
    }));
    const most = Math.max(1, ...lines.map((cell) => cell.lines.length));
    if (below !== "" && second) {
      const blank: Line = { size: 8.6, spans: [] };
      const more = block(faces.regular, type.text, below, flow.box.right - second.x);
      lines.push({ x: second.x, lines: [...Array<Line>(most).fill(blank), ...more] });
    }
    flow.page.part("TR", () => flow.page.mark("TD", () => drawRow(flow, { cells: lines, padding: 2.4 })));
  }
  flow.onContinue = undefined;
  flow.y -= 10;
}
