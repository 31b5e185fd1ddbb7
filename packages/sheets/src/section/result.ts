import { textWidth } from "../font/face";
import { blockHeight, drawBlock, type Line } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawCheckBox } from "../mark/box";
import { drawQr, qrSide } from "../mark/qr";
import { firstLines } from "./bounded-text";
import { footnotesOf } from "./footnote";

/** Lines to write notes on: what is left of the page, within these bounds; two notes a line. */
const noteLines = { fewest: 3, most: 12 } as const;
const noteStep = 13;
const notesHead = 11;
/** Width of a note's number. */
const noteNumber = 26;
const outcomeHeight = 26;
const againHeight = 18;
const signatureHeight = 27;
const fixed = outcomeHeight + againHeight + signatureHeight;

export const outcomes = ["pass", "pass-with-advice", "refused"] as const;

/** Least height of result, notes, signatures, sources and who decides. */
export function resultHeight(context: SheetContext): number {
  return fixed + notesHead + noteLines.fewest * noteStep + blockHeight(smallPrint(context)) + 6;
}

/** Sources of the checks as one list. */
function smallPrint({ flow, faces, model }: SheetContext): Line[] {
  const width = flow.box.right - flow.box.left;
  const { lines } = footnotesOf(model);
  const sources = lines.length === 0 ? "" : `${lines.join(" · ")} · without a number: common practice.`;
  return firstLines(sources, { face: faces.regular, size: 6, width, most: 8 });
}

/** Result, re-presentation, notes and signatures, kept in one piece. */
export function drawResult(context: SheetContext): void {
  const { flow } = context;
  flow.ensure(resultHeight(context));
  const small = smallPrint(context);
  const least = fixed + notesHead + blockHeight(small) + 6;
  const room = Math.floor((flow.free - least) / noteStep);
  flow.page.line([flow.box.left, flow.y, flow.box.right, flow.y], { stroke: rule.heavy });
  const { link } = context.model;
  const right = link === "" ? flow.box.right : flow.box.right - qrSide - 8;
  const top = flow.y;
  drawOutcome(context, right);
  drawAgain(context, right);
  if (link !== "") drawCode(context, { x: right + 8, top: top - 3 });
  drawNotes(context, Math.min(noteLines.most, Math.max(room, noteLines.fewest)), right);
  drawSignatures(context);
  flow.page.mark("P", () => {
    flow.y = drawBlock(flow.page, small, flow.box.left, flow.y - 2);
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
    size: type.fine,
    x: x + qrSide / 2,
    y: top - qrSide - 6,
    text: "changed since?",
    align: "centre",
  });
}

function drawOutcome({ flow, faces }: SheetContext, right: number): void {
  const { page, box, y } = flow;
  page.mark("H2", () =>
    page.text({ face: faces.bold, size: type.heading, x: box.left, y: y - 18, text: "Result" }),
  );
  const from = box.left + 54;
  const width = (right - from) / 3;
  const boxes = outcomes.map((_, at) => [from + at * width + 0.5, y - 22, 16, 16] as const);
  ["Pass", "Pass with advice", "Refused"].forEach((text, at) => {
    const x = from + at * width;
    drawCheckBox(page, x + 0.5, y - 6, 16);
    page.mark("P", () => page.text({ face: faces.bold, size: 12, x: x + 22, y: y - 18, text }));
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

/** Numbered places for remarks, two a line: the check's number, and what is to be said of it. */
function drawNotes({ flow, faces }: SheetContext, lines: number, right: number): void {
  const { page, box } = flow;
  const title = "Notes, each with the number of its check; without a number: on the car";
  page.mark("P", () =>
    page.text({ face: faces.regular, size: type.text, x: box.left, y: flow.y - 8.5, text: title }),
  );
  const top = flow.y - notesHead;
  const gap = 12;
  const width = (right - box.left - gap) / 2;
  for (let at = 0; at < 2 * lines; at++) {
    const x = box.left + (at % 2) * (width + gap);
    const y = top - (Math.floor(at / 2) + 1) * noteStep + 1.5;
    page.line([x, y, x + width, y], { stroke: rule.hair });
    page.uprights([x + noteNumber], [y, y + noteStep - 4], rule.hair);
    const name = `remark.${at + 1}`;
    page.field({
      name: `${name}.check`,
      kind: "text",
      boxes: [[x, y, noteNumber - 1, 11]],
      title: `Note ${at + 1}: number of the check`,
    });
    page.field({
      name: `${name}.text`,
      kind: "text",
      boxes: [[x + noteNumber + 1, y, width - noteNumber - 1, 11]],
      title: `Note ${at + 1}`,
    });
  }
  flow.y = top - lines * noteStep;
}

function drawSignatures({ flow, faces }: SheetContext): void {
  const { page, box } = flow;
  const y = flow.y - 17;
  const width = box.right - box.left;
  const shares = [
    ["Scrutineer, name and signature", 0, 0.42, "scrutineer"],
    ["Driver, signature", 0.45, 0.8, "driver"],
    ["Time", 0.83, 1, "time"],
  ] as const;
  for (const [text, from, to, name] of shares) {
    const x = box.left + from * width;
    page.line([x, y, box.left + to * width, y], { stroke: rule.line });
    page.mark("P", () => page.text({ face: faces.regular, size: type.fine, x, y: y - 7.2, text }));
    page.field({ name, kind: "text", boxes: [[x, y, (to - from) * width, 13]], title: text });
  }
  flow.y -= signatureHeight;
}
