import type { SheetCheck, SheetModel } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import type { Face } from "../font/face";
import { drawHeading, drawParagraph } from "../layout/heading";
import { block, drawRow, type Line, type Row, rowHeight, runOn } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawCheckBox, drawWriteBox } from "../mark/box";
import { shorten } from "../text/wrap";

const title = "Checks, walking round the car";
const pitch = 23;
const results = ["Pass", "Advise", "Refuse", "n/a"] as const;
const text = results.length * pitch + 4;
const reading = 52;
const note = 92;
const stationHeight = 16.5;

/** Checks by station, in the order one walks; each with boxes to mark, its reason, and room to write. */
export function drawChecks(context: SheetContext): void {
  const { flow, model } = context;
  flow.ensure(70);
  drawHeading(context, { title });
  const reason = commonReason(model);
  drawParagraph(context, introduction(context, reason), 3);
  drawMarginMark(flow.page, flow.box.left, { top: flow.y + 9.5, height: 8, broken: false });
  flow.y -= 2;
  model.stations.forEach((station, at) => {
    drawStation(context, { station, name: `${at + 1}  ${station.label}`, reason });
  });
  flow.y -= 6;
}

type Station = SheetModel["stations"][number];

/** The reason most ordinary checks share, told once above them all. */
function commonReason(model: SheetModel): string {
  const counts = new Map<string, number>();
  for (const check of model.stations.flatMap((station) => station.checks)) {
    if (!check.special) counts.set(check.why, (counts.get(check.why) ?? 0) + 1);
  }
  const [first] = [...counts].sort(([, a], [, b]) => b - a);
  return first?.[0] ?? "";
}

function introduction({ flow, faces }: SheetContext, reason: string): Line[] {
  const ordinary = reason === "" ? "" : `Checks without a reason: ${sentence(reason)} `;
  const words = "A bar in the margin: on this sheet because of this car, for the reason given.";
  return block(faces.regular, type.small, ordinary + words, flow.box.right - flow.box.left);
}

function drawStation(
  context: SheetContext,
  { station, name, reason }: { readonly station: Station; readonly name: string; readonly reason: string },
): void {
  const { flow } = context;
  const rows = station.checks.map((check) => checkRow(context, check, reason));
  const [first] = rows;
  if (first === undefined) return;
  flow.ensure(stationHeight + Math.min(rowHeight(first), 120));
  drawStationName(context, name);
  flow.onContinue = () => drawStationName(context, `${name}, continued`);
  for (const row of rows) drawRow(flow, row);
  flow.onContinue = undefined;
}

function drawStationName({ flow, faces }: SheetContext, name: string): void {
  const { page, box, y } = flow;
  const baseline = y - 12;
  const room = box.right - reading - note - 8 - (box.left + text);
  const head = (x: number, word: string) =>
    page.text({ face: faces.regular, size: type.fine, x, y: baseline, text: word });
  results.forEach((word, at) => {
    page.text({
      face: faces.regular,
      size: type.fine,
      x: box.left + at * pitch + 9,
      y: baseline,
      text: word,
      align: "centre",
    });
  });
  page.text({
    face: faces.bold,
    size: type.name,
    x: box.left + text,
    y: baseline,
    text: shorten(faces.bold, type.name, name, room),
  });
  head(box.right - reading - note, "Reading");
  head(box.right - note + 6, "Note");
  page.line([box.left, y - stationHeight, box.right, y - stationHeight], { stroke: rule.line });
  flow.y = y - stationHeight;
}

function checkRow(context: SheetContext, check: SheetCheck, reason: string): Row {
  const { flow, faces } = context;
  const x = flow.box.left + text;

  const measures = check.criterion.kind === "measured" || check.criterion.kind === "datedItem";
  const width = flow.box.right - note - 8 - (measures ? reading : 0) - x;
  const marked = check.special || check.undecided;
  return {
    cells: [{ x, lines: checkLines(faces, check, { width, reason }) }],
    minimum: 18.4,
    decorate: (page, top, height) => {
      const { left, right } = flow.box;
      results.forEach((word, at) => {
        const side = word === "n/a" ? 9 : 12.5;
        drawCheckBox(page, left + at * pitch + 9 - side / 2, top - 2.6 - (12.5 - side) / 2, side);
      });
      if (marked) drawMarginMark(page, left, { top: top - 2, height: height - 4, broken: !check.special });
      if (measures)
        drawWriteBox(page, { x: right - reading - note, top: top - 2.6, width: reading - 4, height: 14.5 });
      page.line([right - note, top, right - note, top - height], { stroke: rule.hair });
    },
  };
}

function checkLines(
  { regular, bold }: SheetContext["faces"],
  check: SheetCheck,
  { width, reason }: { readonly width: number; readonly reason: string },
): Line[] {
  const { criterion } = check;
  const wanted = criterion.kind === "measured" || criterion.kind === "datedItem" ? criterion.text : "";
  const why = check.special || check.why !== reason ? check.why : "";
  const source = check.source === "" ? "" : `[${check.source}]`;
  const span = (face: Face, size: number, text = "") => ({ face, size, text: text === "" ? "" : `${text} ` });
  const small = type.small + 0.2;
  const what = span(check.special ? bold : regular, type.body, check.text);
  const how = [
    span(bold, type.small, sentence(wanted)),
    span(regular, type.small, sentence(check.method ?? "")),
  ];
  const from = span(regular, type.fine, source);
  const reasons = [
    span(bold, small, check.undecided ? "Undecided: the record does not say." : ""),
    span(regular, small, why === "" ? "" : `Why here: ${sentence(why)}`),
  ];
  // A check that needs no more words has its source on the same line: twenty such rows are half a page.
  if ([...how, ...reasons].every(({ text }) => text === "")) return runOn([what, from], width);
  return [...runOn([what], width), ...runOn(reasons, width), ...runOn([...how, from], width)];
}

/** Texts run on one after another here, so each needs its full stop; some rules come without. */
function sentence(text: string): string {
  return text === "" || /[.!?…]["”’)]?$/.test(text) ? text : `${text}.`;
}

interface MarginMark {
  readonly top: number;
  readonly height: number;
  /** Broken: whether the check belongs here could not be decided. */
  readonly broken: boolean;
}

function drawMarginMark(page: ContentWriter, left: number, { top, height, broken }: MarginMark): void {
  if (broken) page.line([left - 7, top, left - 7, top - height], { stroke: 1.6, dash: "2.4 1.8" });
  else page.rect([left - 9, top - height, 4, height], { fill: "red" });
}
