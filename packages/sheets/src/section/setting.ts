import type { SheetSetting } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import { drawColumns, drawHeading } from "../layout/heading";
import { block, type Cell, drawRow, runOn } from "../layout/row";
import type { SheetContext } from "../layout/sheet-context";
import { rule, type } from "../layout/style";
import { drawWriteBox } from "../mark/box";
import { drawBracket } from "../mark/bracket";

const title = "Settings against limits";

type Reading = NonNullable<SheetSetting["left"]>;

/** One reading takes bracket, words, and a box for today's figure. */
const width = { bracket: 54, text: 62, box: 50, gap: 8 } as const;
const reading = width.bracket + width.text + width.box + 2 * width.gap;

interface Columns {
  readonly limits: number;
  readonly left: number;
  readonly right: number;
  readonly whole: number;
}

function columns({ flow }: SheetContext): Columns {
  const right = flow.box.right - reading;
  const left = right - reading - 10;
  return { limits: left - 72, left, right, whole: (left + right) / 2 };
}

/** What the car is set to, last reading and limits, with room for what is measured today. */
export function drawSettings(context: SheetContext): void {
  const { flow, model } = context;
  if (model.settings.length === 0) return;
  flow.ensure(80);
  drawHeading(context, { title, note: "last reading on record; write today's figure in the open box" });
  drawSettingColumns(context);
  flow.onContinue = () => {
    drawHeading(context, { title, note: "continued" });
    drawSettingColumns(context);
  };
  for (const setting of model.settings) drawSetting(context, setting);
  flow.onContinue = undefined;
  flow.y -= 7;
}

function drawSettingColumns(context: SheetContext): void {
  const at = columns(context);
  const measured = width.bracket + width.text + 2 * width.gap;
  drawColumns(context, [
    { x: context.flow.box.left, text: "Setting, unit" },
    { x: at.limits, text: "Limits" },
    { x: at.left, text: "Left" },
    { x: at.left + measured, text: "Left today" },
    { x: at.right, text: "Right" },
    { x: at.right + measured, text: "Right today" },
  ]);
}

function drawSetting(context: SheetContext, setting: SheetSetting): void {
  const { flow, faces } = context;
  const at = columns(context);
  const readings: (readonly [x: number, reading: Reading | undefined])[] =
    setting.whole === undefined
      ? [
          [at.left, setting.left],
          [at.right, setting.right],
        ]
      : [[at.whole, setting.whole]];
  const labels = at.limits - flow.box.left - 8;
  const cells: Cell[] = [
    {
      x: flow.box.left,
      lines: runOn(
        [
          { face: faces.bold, size: type.body, text: `${setting.label} ` },
          { face: faces.regular, size: type.small, text: setting.unit },
        ],
        labels,
      ),
    },
    { x: at.limits, lines: block(faces.regular, type.body, setting.limits, at.left - at.limits - 8) },
    ...readings.map(([x, one]) => readingCell(context, x, one)),
  ];
  drawRow(flow, {
    cells,
    minimum: 22,
    decorate: (page, top) => {
      for (const [x, one] of readings) drawReading(page, { x, top }, one);
    },
  });
}

function readingCell({ faces }: SheetContext, x: number, one: Reading | undefined): Cell {
  const place = x + width.bracket + width.gap;
  const text = one === undefined || one.text === "" ? "–" : one.text;
  const verdict = one === undefined ? "not recorded" : one.verdictText;
  return {
    x: place,
    lines: [
      ...block(faces.bold, type.body, text, width.text),
      ...block(faces.regular, type.fine, verdict, width.text),
    ],
  };
}

function drawReading(
  page: ContentWriter,
  place: { readonly x: number; readonly top: number },
  one: Reading | undefined,
): void {
  const { x, top } = place;
  if (one?.bracket !== undefined) drawBracket(page, { x, y: top - 14.2, width: width.bracket }, one.bracket);
  else page.line([x + 14, top - 12, x + width.bracket - 14, top - 12], { stroke: rule.hair, dash: "1.2 2" });
  drawWriteBox(page, {
    x: x + width.bracket + width.text + 2 * width.gap,
    top: top - 3,
    width: width.box,
    height: 16,
  });
}
