import type { SheetDeviation } from "@trunnion/register";
import { drawHeading } from "../layout/heading";
import { block, blockHeight, drawBlock, type Line, runOn } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawLeaderNumber } from "../mark/plan-leader";
import { drawVerdictMark } from "../mark/verdict-mark";
import type { Span } from "../text/wrap";

const title = "What is different about this car";
const continued = "What is different, continued";
/** Lines one characteristic may take; a longer text ends in an ellipsis. */
const mostLines = 3;
const size = 8.4;
const gutter = 13;
/** Number on the plan and the verdict's mark, before the words. */
const indent = 27;
const padding = 1.3;

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

/** One characteristic with its words broken into lines. */
interface Entry {
  readonly told: Told;
  readonly lines: readonly Line[];
  readonly height: number;
}

/** What differs, in parts: what the first page has no room for stands on a page after the result. */
export interface DifferencesLeft {
  readonly entries: readonly Entry[];
}

/**
 * What deviates, worst first as the model has it, before anything else is said of the car, in two columns. Settings
 * that are out stand with their limits below. Bounded to a height; answers what is left for a further page.
 */
export function drawDifferences(context: SheetContext, room: number): DifferencesLeft {
  const { model } = context;
  const settings = new Set(model.settings.map(({ label }) => label));
  const parts = together(model.deviations.filter(({ label }) => !settings.has(label)));
  const out = together(model.deviations.filter(({ label }) => settings.has(label)));
  const since = commonSince(parts);
  drawHeading(context, { title, note: noteOf(parts.length, out.length, since) });
  const entries = parts.map((told) => entryOf(context, told, since));
  const fitting = fitsInto(entries, room);
  const [now, left] = [entries.slice(0, fitting), entries.slice(fitting)];
  drawEntries(context, now);
  drawWords(context, left.length);
  return { entries: left };
}

/** What the first page had no room for, in full, on as many pages as it takes. */
export function drawDifferencesLeft(context: SheetContext, { entries }: DifferencesLeft): void {
  let left = entries;
  while (left.length > 0) {
    context.flow.next();
    drawHeading(context, { title: continued, note: `${left.length} of them` });
    const fitting = Math.max(1, fitsInto(left, context.flow.free - 4));
    drawEntries(context, left.slice(0, fitting));
    left = left.slice(fitting);
  }
}

const things = (count: number, thing: string) => `${count} ${thing}${count === 1 ? "" : "s"}`;

function noteOf(parts: number, out: number, since: string): string {
  const told = [
    parts === 0 ? "" : things(parts, "part"),
    out === 0 ? "" : `${things(out, "setting")} (figures below)`,
  ].filter((part) => part !== "");
  return `${told.join(", ")}${since === "" ? "" : `; since ${since} where nothing else is said`}`;
}

/** The day most of them share, where several do. */
function commonSince(parts: readonly Told[]): string {
  const counts = new Map<string, number>();
  for (const { since } of parts) if (since !== "") counts.set(since, (counts.get(since) ?? 0) + 1);
  const [first] = [...counts].sort(([, a], [, b]) => b - a);
  return first !== undefined && first[1] > 1 ? first[0] : "";
}

function columnWidth({ flow }: SheetContext): number {
  return (flow.box.right - flow.box.left - gutter) / 2;
}

/** "Rear drop link joint: rod end for rubber bush, different part since 8 Jul 2017". */
function entryOf(context: SheetContext, told: Told, common: string): Entry {
  const { regular, bold } = context.faces;
  const span = (face: typeof regular, text: string): Span => ({ face, size, text });
  const side = told.side === "" ? "" : `, ${told.side}`;
  const wanted = told.specified === "" || told.verdict === "added" ? "" : ` for ${told.specified}`;
  const since =
    told.since === "" || told.since === common
      ? ""
      : told.since.startsWith("before")
        ? ` ${told.since}`
        : ` since ${told.since}`;
  const rest = [told.difference, `${told.verdictText}${since}`].filter((part) => part !== "");
  const lines = runOn(
    [
      span(bold, told.label),
      span(regular, `${side}: `),
      span(bold, told.actual),
      span(regular, `${wanted}; ${rest.join("; ")}`),
    ],
    columnWidth(context) - indent,
  );
  const cut = lines.length > mostLines ? shortened(lines) : lines;
  return { told, lines: cut, height: Math.max(blockHeight(cut), 12) + 2 * padding };
}

function shortened(lines: readonly Line[]): readonly Line[] {
  const last = lines[mostLines - 1];
  if (last === undefined) return lines;
  const spans = last.spans.map((span, at) =>
    at < last.spans.length - 1 ? span : { ...span, text: `${span.text.slice(0, -2).trimEnd()}…` },
  );
  return [...lines.slice(0, mostLines - 1), { ...last, spans }];
}

/** Where the second column begins, with both of them no higher than a height; undefined where they do not fit. */
function turnAt(entries: readonly Entry[], height: number): number | undefined {
  let [column, used, turn] = [0, 0, entries.length];
  for (const [at, entry] of entries.entries()) {
    if (used + entry.height > height) {
      if (column === 1) return undefined;
      [column, used, turn] = [1, 0, at];
    }
    if (entry.height > height) return undefined;
    used += entry.height;
  }
  return turn;
}

/** How many, from the first, fit two columns of a height. */
function fitsInto(entries: readonly Entry[], height: number): number {
  let [low, high] = [0, entries.length];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (turnAt(entries.slice(0, middle), height) === undefined) high = middle - 1;
    else low = middle;
  }
  return low;
}

/** Both columns as even as may be. */
function drawEntries(context: SheetContext, entries: readonly Entry[]): void {
  if (entries.length === 0) return;
  const { flow } = context;
  const total = entries.reduce((sum, { height }) => sum + height, 0);
  let height = total / 2;
  while (turnAt(entries, height) === undefined) height += 2;
  const turn = turnAt(entries, height) ?? entries.length;
  const top = flow.y - 1;
  flow.page.part("L", () => {
    const left = drawColumn(context, entries.slice(0, turn), { x: flow.box.left, top });
    const x = flow.box.left + columnWidth(context) + gutter;
    flow.y = Math.min(left, drawColumn(context, entries.slice(turn), { x, top }));
  });
}

function drawColumn(
  context: SheetContext,
  entries: readonly Entry[],
  { x, top }: { readonly x: number; readonly top: number },
): number {
  const { flow, faces } = context;
  const { page } = flow;
  const width = columnWidth(context);
  let y = top;
  for (const { told, lines, height } of entries) {
    page.part("LI", () =>
      page.mark("LBody", () => {
        drawLeaderNumber(page, [x + 6, y - padding - 5.6], { leader: told.leader, deviations: 1 }, faces);
        drawVerdictMark(page, [x + 19.5, y - padding - 5.2], told.verdict);
        drawBlock(page, lines, x + indent, y - padding - 0.6);
      }),
    );
    y -= height;
    page.line([x, y, x + width, y], { stroke: rule.hair });
  }
  return y;
}

/** What is not known, and what stands further on: a sheet with no deviation must not read as a clean bill. */
function drawWords(context: SheetContext, left: number): void {
  const { faces, model, flow } = context;
  const width = flow.box.right - flow.box.left;
  const lines: Line[] = [];
  if (model.deviations.length === 0) {
    const known = model.car.onRegister
      ? "Nothing on record differs from specification."
      : "This car is not on the register, so nothing is known that differs.";
    lines.push(...block(faces.bold, type.name, known, width));
  }
  if (left > 0)
    lines.push(...block(faces.bold, type.text, `and ${left} more, on the page after the result`, width));
  const { notRecorded } = model;
  const count = notRecorded === 1 ? "1 characteristic is" : `${notRecorded} characteristics are`;
  const text = `${count} not recorded. Not known is not the same as in order.`;
  if (notRecorded > 0) lines.push(...block(faces.regular, type.text, text, width));
  if (lines.length === 0) return;
  flow.page.mark("P", () => {
    flow.y = drawBlock(flow.page, lines, flow.box.left, flow.y - 1.5) - 1.5;
  });
}
