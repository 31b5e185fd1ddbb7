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
const width = { bracket: 48, text: 58, box: 54, gap: 6 } as const;
const reading = width.bracket + width.text + width.box + 2 * width.gap;
const rowHeight = 18.6;

function columns({ flow }: SheetContext) {
  const right = flow.box.right - reading;
  const left = right - reading - 10;
  return { left, right, whole: left };
}

/** What the car is set to, last reading and limits, with room for what is measured today. */
export function drawSettings(context: SheetContext): void {
  const { flow, model, faces } = context;
  if (model.settings.length === 0) return;
  drawHeading(context, {
    title,
    note: "tick: last reading · whisker: uncertainty · notch: nominal · write today's figure in the box",
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
          size: type.small,
          width: flow.box.right - flow.box.left,
          most: 1,
        }),
        flow.box.left,
        flow.y - 2,
      );
    });
  }
  flow.y -= 5;
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
  flow.page.mark("TD", () =>
    drawRow(flow, {
      cells,
      minimum: rowHeight,
      padding: 0.6,
      decorate: (page, top) => {
        for (const [side, one] of readings) drawReading(page, { x: at[side], top }, one);
      },
    }),
  );
  const top = flow.y + rowHeight;
  for (const [side] of readings) {
    flow.page.field({
      name: `setting.${setting.key.replaceAll(".", "-")}.${side}`,
      kind: "text",
      boxes: [[at[side] + width.bracket + width.text + 2 * width.gap + 1, top - 17.4, width.box - 2, 14.6]],
      title: `${setting.label}${side === "whole" ? "" : ` ${side}`}, today's figure`,
    });
  }
}

function labelLines({ faces }: SheetContext, { label, unit, limits }: SheetSetting, room: number) {
  const told = limits === "" ? unit : limits;
  const words = [
    { face: faces.bold, size: type.body, text: `${label}  ` },
    { face: faces.regular, size: type.small, text: told },
  ];
  const lines = runOn(words, room);
  if (lines.length <= 2) return lines;
  const named = firstLines(label, { face: faces.bold, size: type.small, width: room, most: 1 });
  return [...named, ...firstLines(told, { face: faces.regular, size: type.small, width: room, most: 1 })];
}

function readingCell({ faces }: SheetContext, x: number, one: Reading | undefined): Cell {
  const place = x + width.bracket + width.gap;
  const text = one === undefined || one.text === "" ? "–" : one.text;
  const verdict = one === undefined ? "not recorded" : one.verdictText;
  const bound = { width: width.text, most: 1 };
  return {
    x: place,
    lines: [
      ...firstLines(text, { face: faces.bold, size: type.body, ...bound }),
      ...runOn([{ face: faces.regular, size: type.fine, text: verdict }], width.text).slice(0, 1),
    ],
  };
}

function drawReading(
  page: ContentWriter,
  place: { readonly x: number; readonly top: number },
  one: Reading | undefined,
): void {
  const { x, top } = place;
  if (one?.bracket !== undefined) drawBracket(page, { x, y: top - 12.6, width: width.bracket }, one.bracket);
  else page.line([x + 14, top - 11, x + width.bracket - 14, top - 11], { stroke: rule.hair, dash: "1.2 2" });
  drawWriteBox(page, {
    x: x + width.bracket + width.text + 2 * width.gap,
    top: top - 1.6,
    width: width.box,
    height: 16,
  });
}
