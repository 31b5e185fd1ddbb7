import type { SheetDeviation } from "@trunnion/register";
import { drawColumns, drawHeading } from "../layout/heading";
import { block, drawBlock, drawRow, type Line, type Row, rowHeight, runOn } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { type } from "../layout/style";
import { drawLeaderNumber } from "../mark/plan-leader";
import { drawVerdictMark } from "../mark/verdict-mark";
import { firstLines } from "./bounded-text";

const title = "What is different about this car";
/** Lines a cell has; what is longer ends in an ellipsis, and the sheet says where the rest stands. */
const mostLines = 2;

/** Both sides of one characteristic in one row, where the verdict is the same. */
interface Told extends Omit<SheetDeviation, "side"> {
  readonly side: "" | "left" | "right" | "both sides";
}

/** Left and right of one characteristic go into one row: a car is walked round, not read twice. */
export function together(deviations: readonly SheetDeviation[]): readonly Told[] {
  const told: Told[] = [];
  for (const deviation of deviations) {
    const at = told.findIndex(
      ({ label, verdict, side, specified }) =>
        label === deviation.label &&
        verdict === deviation.verdict &&
        specified === deviation.specified &&
        (side === "left" || side === "right") &&
        side !== deviation.side,
    );
    const other = told[at];
    if (other === undefined || deviation.side === undefined)
      told.push({ ...deviation, side: deviation.side ?? "" });
    else told[at] = joined(other, deviation);
  }
  return told;
}

function joined(one: Told, other: SheetDeviation): Told {
  const [left, right] = one.side === "left" ? [one, other] : [other, one];
  const both = (of: "actual" | "difference" | "since") =>
    left[of] === right[of]
      ? left[of]
      : `${of === "since" ? "" : "L "}${left[of]}, ${of === "since" ? "" : "R "}${right[of]}`;
  return {
    ...one,
    side: "both sides",
    actual: both("actual"),
    difference: both("difference"),
    since: both("since"),
  };
}

function columns({ flow }: SheetContext) {
  const { left, right } = flow.box;
  const label = left + 84;
  const spare = right - left - 527;
  const actual = label + 146 + spare / 2;
  const specified = actual + 112 + spare / 2;
  const difference = specified + 84;
  return { verdict: left + 18, label, actual, specified, difference, since: right - 46, end: right };
}

/**
 * What deviates, worst first as the model has it, before anything else is said of the car. Settings that are out
 * are named here and shown with their limits below. Bounded to a height; what is left out is counted.
 */
export function drawDifferences(context: SheetContext, room: number): void {
  const { flow, model } = context;
  const settings = new Set(model.settings.map(({ label }) => label));
  const parts = together(model.deviations.filter(({ label }) => !settings.has(label)));
  const out = together(model.deviations.filter(({ label }) => settings.has(label)));
  const count = parts.length + out.length;
  const note = count === 0 ? "" : `${count} ${count === 1 ? "characteristic" : "characteristics"}`;
  const bottom = flow.y - room;
  drawHeading(context, { title, note });
  if (parts.length > 0) {
    drawColumnNames(context);
    drawParts(context, parts, bottom);
  }
  drawWords(context, out);
}

function drawColumnNames(context: SheetContext): void {
  const at = columns(context);
  context.flow.page.mark("P", () =>
    drawColumns(context, [
      { x: at.verdict, text: "Verdict" },
      { x: at.label, text: "Characteristic" },
      { x: at.actual, text: "On the car" },
      { x: at.specified, text: "Specified" },
      { x: at.difference, text: "Difference" },
      { x: at.since, text: "Since" },
    ]),
  );
}

function drawParts(context: SheetContext, parts: readonly Told[], bottom: number): void {
  const { flow } = context;
  const rows = parts.map((part) => rowOf(context, part));
  const reserved = 24;
  let drawn = 0;
  flow.page.part("Table", () => {
    for (const row of rows) {
      const last = drawn === rows.length - 1;
      if (flow.y - rowHeight(row) < bottom + (last ? 0 : reserved)) break;
      flow.page.part("TR", () => flow.page.mark("TD", () => drawRow(flow, row)));
      drawn++;
    }
  });
  const left = parts.slice(drawn);
  if (left.length > 0) drawLeftOut(context, left);
}

/** Counts what there was no room for, by assembly: the reader must know that there is more. */
function drawLeftOut(context: SheetContext, left: readonly Told[]): void {
  const { flow, faces, model } = context;
  const byLeader = new Map<number, number>();
  for (const { leader } of left) byLeader.set(leader, (byLeader.get(leader) ?? 0) + 1);
  const named = model.leaders.flatMap(({ leader, label }) => {
    const count = byLeader.get(leader);
    return count === undefined ? [] : [`${label} ${count}`];
  });
  const text =
    `and ${left.length} more that ${left.length === 1 ? "differs" : "differ"}, left out for want of room` +
    `${named.length > 0 ? ` (${named.join(", ")})` : ""}: see the record, or this file's attachment.`;
  const bounds = { face: faces.bold, size: type.small, width: flow.box.right - flow.box.left, most: 2 };
  flow.page.mark("P", () => {
    flow.y = drawBlock(flow.page, firstLines(text, bounds), flow.box.left, flow.y - 3);
  });
}

function rowOf(context: SheetContext, told: Told): Row {
  const { flow, faces } = context;
  const { regular, bold } = faces;
  const at = columns(context);
  const cell = (x: number, end: number, text: string, face = regular, size: number = type.body) => ({
    x,
    lines: firstLines(text, { face, size, width: end - x - 5, most: mostLines }),
  });
  const label = runOn(
    [
      { face: bold, size: type.body, text: told.label },
      { face: regular, size: type.small, text: told.side === "" ? "" : `, ${told.side}` },
    ],
    at.actual - at.label - 5,
  );
  return {
    cells: [
      cell(at.verdict + 11, at.label, told.verdictText, bold, type.small),
      { x: at.label, lines: label.slice(0, mostLines) },
      cell(at.actual, at.specified, told.actual, bold),
      cell(at.specified, at.difference, told.specified, regular, type.small),
      cell(at.difference, at.since, told.difference, regular, type.small),
      cell(at.since, at.end + 5, told.since, regular, type.fine),
    ],
    minimum: 15,
    padding: 2,
    decorate: (page, top) => {
      drawLeaderNumber(page, [flow.box.left + 7, top - 7.5], { leader: told.leader, deviations: 1 }, faces);
      drawVerdictMark(page, [at.verdict + 4.5, top - 7.4], told.verdict);
    },
  };
}

/** Settings that are out, and what is not known: a sheet with no deviation must not read as a clean bill. */
function drawWords(context: SheetContext, out: readonly Told[]): void {
  const { faces, model, flow } = context;
  const width = flow.box.right - flow.box.left;
  const lines: Line[] = [];
  if (model.deviations.length === 0) {
    const known = model.car.onRegister
      ? "Nothing on record differs from specification."
      : "This car is not on the register, so nothing is known that differs.";
    lines.push(...block(faces.bold, type.name, known, width));
  }
  if (out.length > 0) {
    const named = out.map(
      ({ label, side, verdictText }) => `${label}${side === "" ? "" : ` ${side}`} ${verdictText}`,
    );
    const text = `Settings: ${named.join("; ")}. Figures below.`;
    lines.push(...firstLines(text, { face: faces.bold, size: type.small, width, most: 2 }));
  }
  const { notRecorded } = model;
  const count = notRecorded === 1 ? "1 characteristic is" : `${notRecorded} characteristics are`;
  const text = `${count} not recorded. Not known is not the same as in order.`;
  if (notRecorded > 0) lines.push(...block(faces.regular, type.small, text, width));
  flow.page.mark("P", () => {
    flow.y = drawBlock(flow.page, lines, flow.box.left, flow.y - 3) - 3;
  });
}
