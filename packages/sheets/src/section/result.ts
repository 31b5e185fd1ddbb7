import { textWidth } from "../font/face";
import { drawHeading, headingHeight } from "../layout/heading";
import { block, blockHeight, drawBlock } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawCheckBox } from "../mark/box";

const decides =
  "The organiser's current regulations and the scrutineer on the day decide. This sheet lists what the record " +
  "says; it does not certify that the car is roadworthy or safe.";

/** Lines to write notes on: what is left of the page, within these bounds. */
const noteLines = { fewest: 2, most: 9 } as const;
const noteStep = 18;
const rest = 26 + 22 + 44;

/** Result, re-presentation, notes and signatures, kept in one piece. */
export function drawResult(context: SheetContext): void {
  const { flow, faces } = context;
  const words = block(faces.regular, type.small, decides, flow.box.right - flow.box.left);
  const fixed = headingHeight + rest + blockHeight(words) + 6;
  flow.ensure(fixed + noteLines.fewest * noteStep);
  const room = Math.floor((flow.free - fixed) / noteStep);
  drawHeading(context, { title: "Result" });
  drawOutcome(context);
  drawAgain(context);
  drawNotes(context, Math.min(noteLines.most, room));
  drawSignatures(context);
  flow.y = drawBlock(flow.page, words, flow.box.left, flow.y - 4);
}

function drawOutcome({ flow, faces }: SheetContext): void {
  const { page, box, y } = flow;
  const width = (box.right - box.left) / 3;
  ["Pass", "Pass with advice", "Refused"].forEach((text, at) => {
    const x = box.left + at * width;
    drawCheckBox(page, x + 0.5, y - 6, 16);
    page.text({ face: faces.bold, size: 12.5, x: x + 23, y: y - 18.5, text });
  });
  flow.y = y - 26;
}

/** A label, and a line to write on up to a place. */
function drawBlank(
  { flow, faces }: SheetContext,
  blank: { readonly from: number; readonly to: number; readonly y: number; readonly text: string },
): void {
  const { from, to, y, text } = blank;
  flow.page.text({ face: faces.regular, size: type.body, x: from, y, text });
  const start = from + textWidth(faces.regular, type.body, text) + 4;
  flow.page.line([start, y - 2, to, y - 2], { stroke: rule.hair });
}

function drawAgain(context: SheetContext): void {
  const { flow, faces } = context;
  const { page, box } = flow;
  const y = flow.y - 17;
  const width = (box.right - box.left) / 3;
  drawBlank(context, { from: box.left, to: box.left + width - 12, y, text: "Re-presentation at" });
  ["accepted", "refused"].forEach((text, at) => {
    const x = box.left + width + at * (width / 2);
    drawCheckBox(page, x + 0.5, y + 8.6, 11);
    page.text({ face: faces.regular, size: type.body, x: x + 16, y, text });
  });
  drawBlank(context, { from: box.left + 2 * width, to: box.right, y, text: "by" });
  flow.y -= 22;
}

function drawNotes({ flow, faces }: SheetContext, lines: number): void {
  const { page, box } = flow;
  page.text({ face: faces.regular, size: type.body, x: box.left, y: flow.y - 14, text: "Notes" });
  for (let line = 1; line <= lines; line++) {
    const y = flow.y - line * noteStep + 3;
    page.line([line === 1 ? box.left + 30 : box.left, y, box.right, y], { stroke: rule.hair });
  }
  flow.y -= lines * noteStep;
}

function drawSignatures({ flow, faces }: SheetContext): void {
  const { page, box } = flow;
  const y = flow.y - 31;
  const width = box.right - box.left;
  const shares = [
    ["Scrutineer, name and signature", 0, 0.42],
    ["Driver, signature", 0.45, 0.8],
    ["Time", 0.83, 1],
  ] as const;
  for (const [text, from, to] of shares) {
    page.line([box.left + from * width, y, box.left + to * width, y], { stroke: rule.line });
    page.text({ face: faces.regular, size: type.fine, x: box.left + from * width, y: y - 8, text });
  }
  flow.y -= 44;
}
