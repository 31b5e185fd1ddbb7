import type { SheetSetting } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import { drawColumns, drawHeading } from "../layout/heading";
import { type Cell, drawBlock, drawRow, runOn } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawWriteBox } from "../mark/box";
import { drawBracket } from "../mark/bracket";
import { firstLines } from "./bounded-text";

const title = "Settings against limits";
/** Rows a first page has room for beside everything else. */
const mostRows = 10;

type Reading = NonNullable<SheetSetting["left"]>;
type Side = "left" | "right" | "whole";

/** One reading takes bracket, words, and a box for today's figure. */
const width = { bracket: 40, text: 88, box: 46, gap: 4 } as const;
const reading = width.bracket + width.text + width.box + 2 * width.gap;
const rowHeight = 14;

function columns({ flow }: SheetContext) {
  const right = flow.box.right - reading;
  const left = right - reading - 8;
  return { left, right, whole: left };
}

/** What the car is set to, last reading and limits, with room for what is measured today. */
export function drawSettings(context: SheetContext): void {
  const { flow, model, faces } = context;
  if (model.settings.length === 0) return;
  drawHeading(context, {
    title,
    note: "tick: last reading · whisker: its uncertainty · notch: nominal · today's figure into the box",
  });
  const at = columns(context);
  const today = width.bracket + width.text + 2 * width.gap;
  flow.page.mark("P", () =>
    drawColumns(context, [
      { x: flow.box.left, text: "Setting, limits" },
      { x: at.left, text: "Left" },
      { x: at.left + today, text: "Left today" },
      { x: at.right, text: "Right" },
      { x: at.right + today, text: "Right today" },
    ]),
  );
  const shown = model.settings.slice(0, mostRows);
  flow.page.part("Table", () => {
    for (const setting of shown) flow.page.part("TR", () => drawSetting(context, setting));
  });
  const left = model.settings.length - shown.length;
  if (left > 0) {
    const text = `and ${left} more ${left === 1 ? "setting" : "settings"}, left out for want of room: see the record, or this file's attachment.`;
    flow.page.mark("P", () => {
      flow.y = drawBlock(
        flow.page,
        firstLines(text, {
          face: faces.bold,
          size: type.text,
          width: flow.box.right - flow.box.left,
          most: 1,
        }),
        flow.box.left,
        flow.y - 2,
      );
    });
  }
  flow.y -= 3;
}

function drawSetting(context: SheetContext, setting: SheetSetting): void {
  const { flow } = context;
  const at = columns(context);
  const readings: (readonly [side: Side, reading: Reading | undefined])[] =
    setting.whole === undefined
      ? [
          ["left", setting.left],
          ["right", setting.right],
        ]
      : [["whole", setting.whole]];
  const cells: Cell[] = [
    { x: flow.box.left, lines: labelLines(context, setting, at.left - flow.box.left - 8) },
    ...readings.map(([side, one]) => readingCell(context, at[side], one)),
  ];
  const before = flow.y;
  flow.page.mark("TD", () =>
    drawRow(flow, {
      cells,
      minimum: rowHeight,
      padding: 1.8,
      decorate: (page, top) => {
        for (const [side, one] of readings) drawReading(page, { x: at[side], top }, one);
      },
    }),
  );
  const top = before;
  for (const [side] of readings) {
    flow.page.field({
      name: `setting.${setting.key.replaceAll(".", "-")}.${side}`,
      kind: "text",
      boxes: [[at[side] + width.bracket + width.text + 2 * width.gap + 1, top - 13, width.box - 2, 11.6]],
      title: `${setting.label}${side === "whole" ? "" : ` ${side}`}, today's figure`,
    });
  }
}

function labelLines({ faces }: SheetContext, { label, unit, limits }: SheetSetting, room: number) {
  const told = limits === "" ? unit : limits;
  const words = [
    { face: faces.bold, size: type.text, text: `${label}  ` },
    { face: faces.regular, size: type.text, text: told },
  ];
  const lines = runOn(words, room);
  if (lines.length <= 1) return lines;
  const named = firstLines(label, { face: faces.bold, size: type.text, width: room, most: 1 });
  return [...named, ...firstLines(told, { face: faces.regular, size: type.text, width: room, most: 1 })];
}

/** The figure and its verdict on one line; where they do not go there the verdict stands below. */
function readingCell({ faces }: SheetContext, x: number, one: Reading | undefined): Cell {
  const place = x + width.bracket + width.gap;
  const text = one === undefined || one.text === "" ? "–" : one.text;
  const verdict = one === undefined ? "not recorded" : one.verdictText;
  const lines = runOn(
    [
      { face: faces.bold, size: type.text, text: `${text} ` },
      { face: faces.regular, size: type.text, text: verdict },
    ],
    width.text,
  );
  if (lines.length <= 2) return { x: place, lines };
  const bound = { width: width.text, most: 1 };
  return {
    x: place,
    lines: [
      ...firstLines(text, { face: faces.bold, size: type.text, ...bound }),
      ...firstLines(verdict, { face: faces.regular, size: type.text, ...bound }),
    ],
  };
}

function drawReading(
  page: ContentWriter,
  place: { readonly x: number; readonly top: number },
  one: Reading | undefined,
): void {
  const { x, top } = place;
  if (one?.bracket !== undefined) drawBracket(page, { x, y: top - 9.8, width: width.bracket }, one.bracket);
  else page.line([x + 10, top - 8, x + width.bracket - 10, top - 8], { stroke: rule.hair, dash: "1.2 2" });
  drawWriteBox(page, {
    x: x + width.bracket + width.text + 2 * width.gap,
    top: top - 1,
    width: width.box,
    height: 12.4,
  });
}
