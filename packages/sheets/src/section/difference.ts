import type { SheetDeviation } from "@trunnion/register";
import { drawColumns, drawHeading, drawParagraph } from "../layout/heading";
import { block, type Cell, drawRow, type Line, runOn } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { bracketFall, bracketRise, drawBracket } from "../mark/bracket";
import { drawLeaderNumber } from "../mark/plan-leader";
import { drawVerdictMark } from "../mark/verdict-mark";

const title = "What is different about this car";
/** More lines than this in a cell, and the texts go across the page under the row. */
const mostLines = 4;

interface Columns {
  readonly verdict: number;
  readonly label: number;
  readonly specified: number;
  readonly actual: number;
  readonly difference: number;
  readonly bracket: number;
  readonly since: number;
  readonly end: number;
}

function columns({ flow }: SheetContext): Columns {
  const { left, right } = flow.box;
  const spare = right - left - 527;
  const label = left + 92;
  const specified = label + 122 + spare;
  return {
    verdict: left + 20,
    label,
    specified,
    actual: specified + 74,
    difference: specified + 150,
    bracket: specified + 206,
    since: specified + 272,
    end: right,
  };
}

/** What deviates, worst first as the model has it, before anything else is said of the car. */
export function drawDifferences(context: SheetContext): void {
  const { flow, model } = context;
  flow.ensure(70);
  flow.y -= 4;
  const count = model.deviations.length;
  drawHeading(context, {
    title,
    note: count === 0 ? "" : count === 1 ? "1 deviation" : `${count} deviations`,
  });
  if (count > 0) {
    drawKey(context);
    drawDifferenceColumns(context);
    flow.onContinue = () => {
      drawHeading(context, { title, note: "continued" });
      drawDifferenceColumns(context);
    };
    for (const deviation of model.deviations) drawDifference(context, deviation);
    flow.onContinue = undefined;
  }
  drawUnknown(context);
}

function drawDifferenceColumns(context: SheetContext): void {
  const at = columns(context);
  drawColumns(context, [
    { x: at.verdict, text: "Verdict" },
    { x: at.label, text: "Characteristic" },
    { x: at.specified, text: "Specified" },
    { x: at.actual, text: "On the car" },
    { x: at.difference, text: "Difference" },
    { x: at.bracket, text: "Limits and value" },
    { x: at.since, text: "Since" },
  ]);
}

/** How to read a bracket, once, at the right end of the heading. */
function drawKey({ flow, faces }: SheetContext): void {
  const { page, box, y } = flow;
  const baseline = y + 5.6;
  const text = "bracket: limits · tick: value · whisker: uncertainty · notch: nominal";
  page.text({ face: faces.regular, size: type.fine, x: box.right, y: baseline, text, align: "right" });
}

/** Texts of a row that stand in columns of their own. */
function columnTexts({ faces }: SheetContext, deviation: SheetDeviation, at: Columns) {
  const { regular, bold } = faces;
  return [
    {
      name: "Specified",
      text: deviation.specified,
      face: regular,
      size: type.body,
      x: at.specified,
      end: at.actual,
    },
    {
      name: "On the car",
      text: deviation.actual,
      face: bold,
      size: type.body,
      x: at.actual,
      end: at.difference,
    },
    {
      name: "Difference",
      text: deviation.difference,
      face: regular,
      size: type.body,
      x: at.difference,
      end: at.bracket,
    },
    { name: "Since", text: deviation.since, face: regular, size: type.small, x: at.since, end: at.end + 6 },
  ].map((column) => ({
    ...column,
    lines: block(column.face, column.size, column.text, column.end - column.x - 6),
  }));
}

function drawDifference(context: SheetContext, deviation: SheetDeviation): void {
  const { flow, faces } = context;
  const at = columns(context);
  const { regular, bold } = faces;
  const texts = columnTexts(context, deviation, at);
  const long = texts.filter(({ lines }) => lines.length > mostLines);
  const side = deviation.side === undefined ? "" : `, ${deviation.side}`;
  const label = runOn(
    [
      { face: bold, size: type.body, text: deviation.label },
      { face: regular, size: type.body, text: side },
    ],
    at.specified - at.label - 6,
  );
  const cells: Cell[] = [
    { x: at.verdict + 11, lines: block(bold, type.small, deviation.verdictText, at.label - at.verdict - 14) },
    { x: at.label, lines: label },
    ...texts.map(({ x, lines, size }) => ({
      x,
      lines: lines.length > mostLines ? block(regular, size, "below", 60) : lines,
    })),
  ];
  const { bracket } = deviation;
  if (long.length > 0) flow.ensure(60);
  drawRow(flow, {
    cells,
    minimum: bracket === undefined ? 19 : bracketRise + bracketFall + 7.6,
    padding: 4,
    ruled: long.length === 0,
    decorate: (page, top) => {
      drawLeaderNumber(
        page,
        [flow.box.left + 7, top - 9.3],
        { leader: deviation.leader, deviations: 1 },
        faces,
      );
      drawVerdictMark(page, [at.verdict + 4.5, top - 8.6], deviation.verdict);
      if (bracket === undefined) return;
      drawBracket(
        page,
        { x: at.bracket, y: top - 4.8 - bracketRise, width: at.since - at.bracket - 10 },
        bracket,
      );
    },
  });
  if (long.length > 0) drawLong(context, long, at.label);
}

/** Texts too long for their column, one under the other across the page. */
function drawLong(
  { flow, faces }: SheetContext,
  texts: readonly { readonly name: string; readonly text: string }[],
  x: number,
): void {
  const width = flow.box.right - x;
  const lines = texts.flatMap(({ name, text }) => block(faces.regular, type.body, `${name}: ${text}`, width));
  drawRow(flow, { cells: [{ x, lines }], padding: 2 });
}

/** Says what is not known: a sheet with no deviation must not read as a clean bill. */
function drawUnknown(context: SheetContext): void {
  const { faces, model, flow } = context;
  const width = flow.box.right - flow.box.left;
  const lines: Line[] = [];
  if (model.deviations.length === 0) {
    const known = model.car.onRegister
      ? "Nothing on record differs from specification."
      : "This car is not on the register, so nothing is known that differs.";
    lines.push(...block(faces.bold, type.name, known, width));
  }
  const { notRecorded } = model;
  const count = notRecorded === 1 ? "1 characteristic is" : `${notRecorded} characteristics are`;
  if (notRecorded > 0)
    lines.push(
      ...block(
        faces.regular,
        type.body,
        `${count} not recorded. Not known is not the same as in order.`,
        width,
      ),
    );
  drawParagraph(context, lines, 4);
  if (model.deviations.length === 0)
    flow.page.line([flow.box.left, flow.y - 5, flow.box.right, flow.y - 5], { stroke: rule.hair });
  flow.y -= 7;
}
