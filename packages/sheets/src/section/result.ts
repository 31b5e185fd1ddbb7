import { textWidth } from "../font/face";
import { drawHeading, headingHeight } from "../layout/heading";
import { blockHeight, drawBlock, type Line } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawCheckBox } from "../mark/box";
import { drawQr, qrSide } from "../mark/qr";
import { firstLines } from "./bounded-text";
import { footnotesOf } from "./footnote";

const decides =
  "The organiser's current regulations and the scrutineer on the day decide. This sheet lists what the record " +
  "says; it does not certify that the car is roadworthy or safe.";

/** Lines to write notes on: what is left of the page, within these bounds. */
const noteLines = { fewest: 2, most: 9 } as const;
const noteStep = 14;
/** Lines of notes that end at the code. */
const besideCode = 2;
const outcomeHeight = 25;
const againHeight = 19;
const signatureHeight = 32;
const fixed = outcomeHeight + againHeight + signatureHeight;

export const outcomes = ["pass", "pass-with-advice", "refused"] as const;

/** Least height of result, notes, signatures, sources and who decides. */
export function resultHeight(context: SheetContext): number {
  return headingHeight + fixed + noteLines.fewest * noteStep + blockHeight(smallPrint(context)) + 8;
}

/** Sources of the checks as one list, and who decides. */
function smallPrint({ flow, faces, model }: SheetContext): Line[] {
  const width = flow.box.right - flow.box.left;
  const { lines } = footnotesOf(model);
  const sources = lines.length === 0 ? "" : `${lines.join(" · ")} · without a number: common practice.`;
  return [
    ...firstLines(sources, { face: faces.regular, size: 5.8, width, most: 7 }),
    ...firstLines(decides, { face: faces.bold, size: type.fine + 0.4, width, most: 2 }),
  ];
}

/** Result, re-presentation, notes and signatures, kept in one piece. */
export function drawResult(context: SheetContext): void {
  const { flow } = context;
  flow.ensure(resultHeight(context));
  const small = smallPrint(context);
  const least = headingHeight + fixed + blockHeight(small) + 8;
  const room = Math.floor((flow.free - least) / noteStep);
  drawHeading(context, { title: "Result" });
  const { link } = context.model;
  const right = link === "" ? flow.box.right : flow.box.right - qrSide - 8;
  const top = flow.y;
  drawOutcome(context, right);
  drawAgain(context, right);
  if (link !== "") drawCode(context, { x: right + 8, top: top - 3 });
  drawNotes(context, Math.min(noteLines.most, Math.max(room, noteLines.fewest)), right);
  drawSignatures(context);
  flow.page.mark("P", () => {
    flow.y = drawBlock(flow.page, small, flow.box.left, flow.y - 3);
  });
}

/** Where a camera sees whether the record moved on after printing. */
function drawCode(
  { flow, faces, model }: SheetContext,
  { x, top }: { readonly x: number; readonly top: number },
): void {
  const { page } = flow;
  page.mark("Figure", () => drawQr(page, model.link, { x, top }), `QR code of ${model.link}`);
  page.text({
    face: faces.regular,
    size: 5.8,
    x: x + qrSide / 2,
    y: top - qrSide - 6,
    text: "changed since?",
    align: "centre",
  });
}

function drawOutcome({ flow, faces }: SheetContext, right: number): void {
  const { page, box, y } = flow;
  const width = (right - box.left) / 3;
  const boxes = outcomes.map((_, at) => [box.left + at * width + 0.5, y - 21, 16, 16] as const);
  ["Pass", "Pass with advice", "Refused"].forEach((text, at) => {
    const x = box.left + at * width;
    drawCheckBox(page, x + 0.5, y - 5, 16);
    page.mark("P", () => page.text({ face: faces.bold, size: 12.5, x: x + 23, y: y - 17.5, text }));
  });
  page.field({ name: "decision", kind: "choice", boxes, choices: outcomes, title: "Decision" });
  flow.y = y - outcomeHeight;
}

/** A label, and a line to write on up to a place. */
function drawBlank(
  { flow, faces }: SheetContext,
  blank: {
    readonly from: number;
    readonly to: number;
    readonly y: number;
    readonly text: string;
    readonly name: string;
  },
): void {
  const { from, to, y, text, name } = blank;
  flow.page.mark("P", () => flow.page.text({ face: faces.regular, size: type.body, x: from, y, text }));
  const start = from + textWidth(faces.regular, type.body, text) + 4;
  flow.page.line([start, y - 2, to, y - 2], { stroke: rule.hair });
  flow.page.field({ name, kind: "text", boxes: [[start, y - 2, Math.max(8, to - start), 12]], title: text });
}

function drawAgain(context: SheetContext, right: number): void {
  const { flow, faces } = context;
  const { page, box } = flow;
  const y = flow.y - 13;
  const width = (right - box.left) / 3;
  drawBlank(context, {
    from: box.left,
    to: box.left + width - 12,
    y,
    text: "Re-presented at",
    name: "again.at",
  });
  const boxes = ["accepted", "refused"].map((text, at) => {
    const x = box.left + width + at * (width / 2);
    drawCheckBox(page, x + 0.5, y + 8.6, 11);
    page.mark("P", () => page.text({ face: faces.regular, size: type.body, x: x + 16, y, text }));
    return [x + 0.5, y - 2.4, 11, 11] as const;
  });
  page.field({
    name: "again.result",
    kind: "choice",
    boxes,
    choices: ["accepted", "refused"],
    title: "Re-presented, result",
  });
  drawBlank(context, { from: box.left + 2 * width, to: right, y, text: "by", name: "again.by" });
  flow.y -= againHeight;
}

function drawNotes({ flow, faces }: SheetContext, lines: number, right: number): void {
  const { page, box } = flow;
  page.mark("P", () =>
    page.text({
      face: faces.regular,
      size: type.body,
      x: box.left,
      y: flow.y - 11,
      text: "Notes, with the number of the check",
    }),
  );
  const under = flow.y - 6;
  const from = box.left + textWidth(faces.regular, type.body, "Notes, with the number of the check") + 6;
  for (let line = 1; line <= lines; line++) {
    const y = flow.y - line * noteStep + 2;
    const end = line <= besideCode ? right : box.right;
    page.line([line === 1 ? from : box.left, y, end, y], { stroke: rule.hair });
  }
  const bottom = flow.y - lines * noteStep + 2;
  page.field({
    name: "notes",
    kind: "lines",
    boxes: [[from, bottom, right - from, under - bottom]],
    title: "Notes",
    size: 8,
  });
  flow.y -= lines * noteStep;
}

function drawSignatures({ flow, faces }: SheetContext): void {
  const { page, box } = flow;
  const y = flow.y - 21;
  const width = box.right - box.left;
  const shares = [
    ["Scrutineer, name and signature", 0, 0.42, "scrutineer"],
    ["Driver, signature", 0.45, 0.8, "driver"],
    ["Time", 0.83, 1, "time"],
  ] as const;
  for (const [text, from, to, name] of shares) {
    const x = box.left + from * width;
    page.line([x, y, box.left + to * width, y], { stroke: rule.line });
    page.mark("P", () => page.text({ face: faces.regular, size: type.fine, x, y: y - 7.5, text }));
    page.field({ name, kind: "text", boxes: [[x, y, (to - from) * width, 15]], title: text });
  }
  flow.y -= signatureHeight;
}
